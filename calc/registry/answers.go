package registry

// answers are the tables of calculations that do not carry their own yet.
var answers = map[string]Field{
	"salt": result(
		parts("couples", wording("where"), wording("anode"), wording("cathode"), figure("gap_v", "V"), figure("over_v", "V")),
		figure("since_wash_g", "g"), wording("wash_due"), wording("why")),
	"checks": listing(wording("id"), key("station", "front_wheel", "front_brake", "bar", "frame", "rear_wheel", "rear_brake"),
		wording("title"), wording("look_for"), wording("how"), wording("limit"), key("worst", "note", "care", "stop"), wording("source"),
		part("measure", wording("what"), key("unit", "mm"), limitAnswer("stop"), limitAnswer("care")).optional()),
	"due": listing(wording("id"), wording("title"), onDay("due"), tally("overdue_days", "d"), wording("why"), wording("source")),
	"pack": result(stepsAnswer("steps"), wordings("bag"), wordings("buy_there"),
		parts("goods", wording("id"), key("cabin", "yes", "no", "ask"), key("hold", "yes", "no", "ask"), wording("why"), wording("dated")),
		stepsAnswer("arrival")),
}

func limitAnswer(name string) Field {
	return part(name, key("when", "below", "to", "above"), figure("mm", "mm")).nullable()
}

func stepsAnswer(name string) Field {
	return parts(name, wording("id"), wording("stage"), wording("text"), wording("tool"), wordings("needs"),
		flag("loosens").optional(), flag("must").optional(), wordings("undoes").optional(), wordings("as_built").optional())
}
