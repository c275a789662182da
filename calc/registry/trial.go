package registry

import (
	"slices"
	"strconv"

	"rimside/calc/trial"
)

const (
	minArms, maxArms = 2, 3
	mostRuns         = 200
	mostRounds       = 12
	betterLess       = "less"
	betterMore       = "more"
)

var trialCalculation = calculation{
	name: "trial",
	table: []*Field{
		plainList("arms", minArms, maxArms, label("", 60)),
		listOf("runs", 0, mostRuns,
			label("arm", 60),
			num("value", "", 0, 1e6), // seconds, or whatever was read
			yesNo("struck").instead(false),
		),
		oneOf("better", []string{betterLess, betterMore}),
		&Field{Name: "looks", Kind: integer, Min: 1, Max: trial.MostLooks, Optional: true, Default: 1.0}, // how often it will be looked at in all
	},
	example:  `{"arms":["A","B"],"runs":[{"arm":"A","value":61.2,"struck":false},{"arm":"B","value":62.3},{"arm":"B","value":61.9},{"arm":"A","value":61.4},{"arm":"A","value":75,"struck":true}],"better":"less"}`,
	together: armsOfRuns,
	run:      runTrial,
}

// trialAnswer: the difference of the best arm and its nearest rival (of two arms, their only one), second minus first as they were
// listed, between low and high. Nothing but the difference is known where an arm has fewer than two runs.
func trialAnswer() *Field {
	compared := []*Field{
		figure("difference", "").nullable(), figure("low", "").nullable(), figure("high", "").nullable(), figure("chance_first_better", "").nullable(), flag("shown"),
		tally("runs_to_settle", "").nullable(),
	}
	pair := append([]*Field{wording("first"), wording("second")}, compared...)
	return result(append(slices.Clone(compared), wording("best").nullable(), figure("level", ""), parts("arms", wording("arm"), tally("runs", ""), figure("mean", "").nullable()), parts("pairs", pair...))...)
}

// armsOfRuns: the arms differ, and each run is of one of them.
func armsOfRuns(v values) *Error {
	arms := v.words("arms")
	var faults *Error
	for i, arm := range arms {
		if slices.Contains(arms[:i], arm) {
			faults = together(faults, wrong(CodeDuplicate, join("arms", strconv.Itoa(i))))
		}
	}
	for i, run := range v.items("runs") {
		if arm := run.text("arm"); arm != "" && len(arms) > 0 && !slices.Contains(arms, arm) {
			faults = together(faults, wrong(CodeChoice, join(join("runs", strconv.Itoa(i)), "arm"), "choices", arms))
		}
	}
	return faults
}

func runTrial(v values) (any, *Error) {
	names := v.words("arms")
	of := make([][]float64, len(names))
	var all []float64
	for _, run := range v.items("runs") {
		if i := slices.Index(names, run.text("arm")); !run.yes("struck") {
			of[i], all = append(of[i], run.num("value")), append(all, run.num("value"))
		}
	}
	step := trial.StepOf(all)
	arms := make([]trial.Arm, len(names))
	for i := range arms {
		arms[i] = trial.Summarise(of[i], step)
	}
	less := v.text("better") == betterLess
	verdict := trial.Judge(arms, less, int(v.num("looks")))
	var pairs []any
	for _, p := range verdict.Pairs {
		pairs = append(pairs, append(fields{{"first", names[p.First]}, {"second", names[p.Second]}}, comparedFields(p, arms, less)...))
	}
	var best any
	if verdict.Best >= 0 {
		best = names[verdict.Best]
	}
	return append(comparedFields(verdict.Pairs[verdict.Closest], arms, less), fields{
		{"best", best}, {"level", 1 - verdict.Level}, {"arms", armFields(names, arms)}, {"pairs", pairs},
	}...), nil
}

func comparedFields(p trial.Pair, arms []trial.Arm, less bool) fields {
	var difference, low, high, chance, runs any
	if arms[p.First].Runs > 0 && arms[p.Second].Runs > 0 {
		difference = p.Difference
	}
	if p.Known {
		low, high, chance = p.Low, p.High, p.Above // above 0 the first has the smaller value
		if !less {
			chance = 1 - p.Above
		}
	}
	if p.Named {
		runs = p.Runs
	}
	return fields{{"difference", difference}, {"low", low}, {"high", high}, {"chance_first_better", chance}, {"shown", p.Shown}, {"runs_to_settle", runs}}
}

func armFields(names []string, arms []trial.Arm) []any {
	var out []any
	for i, arm := range arms {
		var mean any
		if arm.Runs > 0 {
			mean = arm.Mean
		}
		out = append(out, fields{{"arm", names[i]}, {"runs", arm.Runs}, {"mean", mean}})
	}
	return out
}

var dealCalculation = calculation{
	name: "deal",
	table: []*Field{
		plainList("arms", minArms, maxArms, label("", 60)),
		&Field{Name: "rounds", Kind: integer, Min: 1, Max: mostRounds},
		&Field{Name: "seed", Kind: integer, Max: 1<<32 - 1}, // drawn by the caller; the same deals the same
	},
	example:  `{"arms":["A","B"],"rounds":2,"seed":5}`,
	together: armsOfRuns,
	run: func(v values) (any, *Error) {
		names := v.words("arms")
		var order []any
		for _, place := range trial.Deal(len(names), int(v.num("rounds")), uint32(v.num("seed"))) {
			order = append(order, names[place])
		}
		return fields{{"order", order}, {"round", trial.RoundOf(len(names))}}, nil
	},
}

// dealAnswer is the order of the runs, and how many of them are one round.
func dealAnswer() *Field { return result(wordings("order"), tally("round", "")) }
