package registry

// answerOf is the table of the named calculation's answer. Functions, not variables, hold these tables: the browser's build, which
// never asks, leaves them out.
func answerOf(name string) *Field {
	switch name {
	case "pressure":
		return pressureAnswer()
	case "air":
		return airAnswer()
	case "leak":
		return leakAnswer()
	case "expected":
		return expectedAnswer()
	case "shift":
		return shiftAnswer()
	case "co2":
		return co2Answer()
	case "pump":
		return pumpAnswer()
	case "fit":
		return fitAnswer()
	case "salt":
		return saltAnswer()
	case "match":
		return matchAnswer()
	case "cover":
		return coverAnswer()
	case "share":
		return shareAnswer()
	case "ready":
		return readyAnswer()
	case "checks":
		return checksAnswer()
	case "due":
		return dueAnswer()
	case "pack":
		return packAnswer()
	}
	return nil
}

func airAnswer() *Field {
	return result(figure("kpa", "kPa"), pairOf("ambient_kpa", "kPa")) // ambient: at from, at to
}

func leakAnswer() *Field {
	return result(figure("loss_per_day", ""), figure("ahead_kpa", "kPa"))
}

func saltAnswer() *Field {
	return result(
		parts("couples", wording("where"), wording("anode"), wording("cathode"), figure("gap_v", "V"), figure("over_v", "V")),
		figure("since_wash_g", "g"), wording("wash_due"), wording("why"))
}

func checksAnswer() *Field {
	return listing(wording("id"), key("station", "front_wheel", "front_brake", "bar", "frame", "rear_wheel", "rear_brake"),
		wording("title"), wording("look_for"), wording("how"), wording("limit"), key("worst", "note", "care", "stop"), wording("source"),
		part("measure", wording("what"), key("unit", "mm"), limitAnswer("stop"), limitAnswer("care")).optional())
}

func dueAnswer() *Field {
	return listing(wording("id"), wording("title"), onDay("due"), tally("overdue_days", "d"), wording("why"), wording("source"))
}

func packAnswer() *Field {
	return result(stepsAnswer("steps"), wordings("bag"), wordings("buy_there"),
		parts("goods", wording("id"), key("cabin", "yes", "no", "ask"), key("hold", "yes", "no", "ask"), wording("why"), wording("dated")),
		stepsAnswer("arrival"))
}

func limitAnswer(name string) *Field {
	return part(name, key("when", "below", "to", "above"), figure("mm", "mm")).nullable()
}

func stepsAnswer(name string) *Field {
	return parts(name, wording("id"), wording("stage"), wording("text"), wording("tool"), wordings("needs"),
		flag("loosens").optional(), flag("must").optional(), wordings("undoes").optional(), wordings("as_built").optional())
}
