package main

// mutant is one line changed for the worse, and the tests that have to notice.
type mutant struct {
	name, file, from, to string
	tests                []string // arguments of go test
}

var (
	pressureTests = []string{"./calc/pressure"}
	tyreTests     = []string{"./calc/tyre", "./calc/pressure"}
	readyTests    = []string{"./calc/ready"}
	sparesTests   = []string{"./calc/spares"}
	mergeTests    = []string{"./store/oplog/..."}
	bookTests     = []string{"./store/sqlite"}
	photoTests    = []string{"./store/blob", "./store/sqlite"}
	webTests      = []string{"./server/access", "./server/web"}
)

// browser names the journeys that drive the app in a browser.
func browser(pattern string) []string { return []string{"./pwa/journey", "-run", pattern} }

var all = []mutant{
	{"hookless cap", "calc/tyre/pair.go", "HooklessCap = unit.Pascal(500e3)", "HooklessCap = unit.Pascal(550e3)", tyreTests},
	{"hookless rims are asked for the tyre's name", "calc/tyre/pair.go", "case hookless && !p.HooklessNamed:", "case false && !p.HooklessNamed:", tyreTests},
	{"hookless least width", "calc/tyre/pair.go", "HooklessMarginMM = 5", "HooklessMarginMM = 4", tyreTests},
	{"bead seats differ", "calc/tyre/pair.go", "case math.Round(p.TyreBeadSeat.MM()) != math.Round(p.RimBeadSeat.MM()):", "case math.Round(p.TyreBeadSeat.MM()) < math.Round(p.RimBeadSeat.MM()):", tyreTests},
	{"too narrow on hooked rims", "calc/tyre/pair.go", "case !hookless && ratio < StopBelowRatio:", "case !hookless && ratio < StopBelowRatio/2:", tyreTests},
	{"unread maximum", "calc/pressure/constants.go", "UnreadMax = unit.Pascal(250e3)", "UnreadMax = unit.Pascal(300e3)", pressureTests},
	{"lowest limit binds", "calc/pressure/limits.go", "if candidate.max < least.max {", "if candidate.max > least.max {", pressureTests},
	{"limit where it is set", "calc/pressure/limits.go", "moment{{AtLimitRide, in.Ride}, {AtLimitSet, in.Set}}", "moment{{AtLimitRide, in.Ride}, {AtLimitSet, in.Ride}}", pressureTests},
	{"limit at the warmest hour", "calc/pressure/limits.go", "\tif in.Warmest != nil {\n\t\tout = append(out, moment{AtLimitWarmest, air.State{Temperature: *in.Warmest, Alt", "\tif false {\n\t\tout = append(out, moment{AtLimitWarmest, air.State{Temperature: *in.Warmest, Alt", pressureTests},
	{"rim's own marking", "calc/pressure/limits.go", "if w.Rim.Max > 0 {", "if false {", pressureTests},
	{"over the limit a little is let out", "calc/pressure/action.go", "(overLimit || -gap > near(aim))", "(-gap > near(aim))", pressureTests},
	{"struck rim never softens", "calc/pressure/shift.go", "heldShift(math.Max(sum/n, unstruck/without))", "heldShift(sum / n)", pressureTests},
	{"shift against what was recommended", "calc/pressure/shift.go", "math.Log(float64(n.Ridden / n.P0))", "math.Log(float64(n.P0 / n.Ridden))", pressureTests},
	{"notes of another tyre", "calc/pressure/shift.go", "case *n.Tyre != now:", "case false:", pressureTests},
	{"one note a ride", "calc/pressure/shift.go", "again && n.Ride != \"\"", "again && n.Ride == \"\"", pressureTests},
	{"fine range holds the number", "calc/pressure/best.go", "High: max(number, min(high, end(high)))", "High: min(high, end(high)) * 0.9", pressureTests},
	{"wet ground", "calc/pressure/constants.go", "WetFactor = 0.95", "WetFactor = 1.05", pressureTests},
	{"worst wins", "calc/ready/state.go", "if r.Severity == check.Stop {", "if r.Severity == check.Note {", readyTests},
	{"future walks promise nothing", "calc/ready/state.go", "!(e.Day > today && reassures(e.Kind))", "true", readyTests},
	{"closed findings only by name", "calc/ready/reason.go", "return c.ID == f.ID", "return c.ID != f.ID", readyTests},
	{"rotor sizes", "calc/spares/match.go", "SameWithin = unit.Metre(0.4e-3)", "SameWithin = unit.Metre(4e-3)", sparesTests},
	{"a stopped wheel is not offered", "calc/spares/match.go", "case j.spare.Stopped:", "case false:", sparesTests},
	{"sprocket past the derailleur", "calc/spares/match.go", "case s.MaxCog > e.MaxCog:", "case s.MaxCog > e.MaxCog+8:", sparesTests},
	{"cover's bound", "calc/spares/search.go", "options[:min(places, len(options))]", "options[:min(1, len(options))]", sparesTests},
	{"a lockring's torque", "calc/pack/torque.go", `{"rotor_lockring", 40, 40}`, `{"rotor_lockring", 4, 4}`, []string{"./calc/pack"}},
	{"cartridges in the hold", "calc/pack/rules.go", "MostCartridges = 4", "MostCartridges = 6", []string{"./calc/pack"}},
	{"cartridges in the cabin", "calc/pack/rules.go", `Verdict{Cabin: No, Hold: Ask, Why: "cartridge_hold"`, `Verdict{Cabin: Ask, Hold: Ask, Why: "cartridge_hold"`, []string{"./calc/pack"}},
	{"what a wash leaves", "calc/salt/log.go", "WashLeaves = 0.1", "WashLeaves = 0.6", []string{"./calc/salt"}},
	{"a strong couple's wash", "calc/salt/index.go", "WashAtStrong = 1.0", "WashAtStrong = 3.0", []string{"./calc/salt"}},
	{"bases supersede", "store/oplog/merge.go", "if base != op.ID {", "if base == op.ID {", mergeTests},
	{"winner is the newest", "store/oplog/merge.go", "cmp.Or(cmp.Compare(a.At, b.At), cmp.Compare(a.ID, b.ID))", "cmp.Or(cmp.Compare(a.ID, b.ID), cmp.Compare(a.At, b.At))", mergeTests},
	{"an erase is for ever", "store/oplog/merge.go", "state.Erased = state.Erased || op.Erases()", "state.Erased = op.Erases()", mergeTests},
	{"durability of a push", "store/sqlite/book_connect.go", `"busy_timeout(5000)", "journal_mode(WAL)", "synchronous(FULL)"`, `"busy_timeout(5000)", "journal_mode(WAL)", "synchronous(NORMAL)"`, bookTests},
	{"erased bytes are overwritten", "store/sqlite/book_connect.go", `"foreign_keys(1)", "secure_delete(1)", "wal_autocheckpoint(0)"`, `"foreign_keys(1)", "secure_delete(0)", "wal_autocheckpoint(0)"`, bookTests},
	{"the cursor stands behind what was given", "store/sqlite/pull_page.go", "page.Next = seq\n\t\thash", "page.Next = seq + 1\n\t\thash", bookTests},
	{"a damaged op is not handed on", "store/sqlite/pull_page.go", "!bytes.Equal(sum[:], stored)", "false", bookTests},
	{"a photo is on the disk", "store/blob/put.go", "errors.Join(err, file.Sync(), file.Close())", "errors.Join(err, file.Close())", photoTests},
	{"a photo has its name's hash", "store/blob/put.go", "case hex.EncodeToString(sum[:]) != hash:", "case false:", photoTests},
	{"a backup is on the disk", "store/sqlite/backup_write.go", "errors.Join(out.tar.Close(), file.Sync())", "errors.Join(out.tar.Close())", bookTests},
	{"foreign names of this server", "server/web/middleware_host.go", "if !hosts.Allows(r.Host) {", "if false {", webTests},
	{"only who is paired", "server/web/middleware_paired.go", "case entry.In:", "case entry.In || true:", webTests},
	{"a revoked phone stays out", "server/access/door.go", "\tif out {", "\tif false {", webTests},
	{"data is not cached", "pwa/src/sw.ts", "/^(api|recover)(\\/|$)/", "/^(recover)(\\/|$)/", browser("TestOnlyTheRealAppIsKept|TestColdStart|TestFromAColdStart|TestPhonesAreLetIn")},
	{"half a version is not kept", "pwa/src/sw.ts", "if (!response.ok || response.redirected)", "if (false)", browser("TestOnlyTheRealAppIsKept|TestANewVersion")},
	{"ready: a begun walk of another moment", "pwa/src/book/checks/walk.ts", "`walk/${bike}/${moment}`", "`walk/${bike}`", browser("TestAStartedWalkIsNotLost")},
	{"ready: an open stop under a clean walk", "pwa/src/book/checks/ready_events.ts", "  openFound(lists, known, file);\n", "", browser("TestAStartedWalkIsNotLost")},
	{"ready: a crack travels with its wheel", "pwa/src/book/checks/ready_events.ts", "textOf(entry, \"thing\") || wasOf(", "bike || wasOf(", browser("TestACrackTravelsWithItsWheel")},
	{"ready: pages of a person have their words", "pwa/src/words/en/records.ts", `"recKind.person": "Person",`, "", browser("TestScripts")},
}
