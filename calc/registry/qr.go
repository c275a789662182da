package registry

import "rimside/calc/qr"

var qrCalculation = calculation{
	name:    "qr",
	table:   []*Field{label("text", qr.MaxBytes)},
	example: `{"text":"https://car.example/#/car/tags/7K3QM"}`,
	run: func(v values) (any, *Error) {
		code, err := qr.Encode(v.text("text"))
		if err != nil { // letters of several bytes
			return nil, wrong(CodeBounds, "text", "min", 1.0, "max", float64(qr.MaxBytes), "characters", true)
		}
		rows := make([]any, code.Size())
		for y := range rows {
			row := make([]byte, code.Size())
			for x := range row {
				row[x] = '0'
				if code.Dark(x, y) {
					row[x] = '1'
				}
			}
			rows[y] = string(row)
		}
		return fields{{"quiet", float64(qr.Quiet)}, {"rows", rows}}, nil
	},
}

// qrAnswer: a string a row, 1 for a dark module; quiet is the white rim that belongs round them.
func qrAnswer() *Field {
	return result(tally("quiet", ""), wordings("rows"))
}
