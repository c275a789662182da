package pack

// Question is something not known that would change the lists: a field of the bike or, with a side, of the wheel there; or legs_us of
// the trip.
type Question struct{ Field, Side string }

// Questions lists the fields that may be asked.
func Questions() []string {
	return []string{"legs_us", "brake", "rotor_mount", "axle", "pedals", "shifting", "derailleur", "seatpost", "cockpit"}
}

// questions are the open ones, the trip's first; nothing is asked that this way does not touch.
func questions(t Trip) []Question {
	var out []Question
	ask := func(field, side string, unknown bool) {
		if unknown {
			out = append(out, Question{field, side})
		}
	}
	handled := t.Way.handled()
	ask("legs_us", "", handled && t.USLeg == "")
	bothOpen := t.Bike.Front.Brake == "" && t.Bike.Rear.Brake == ""
	ask("brake", "", bothOpen)
	for _, e := range t.Bike.ends() {
		ask("brake", e.side, e.Brake == "" && !bothOpen)
		ask("rotor_mount", e.side, handled && sure(e.Brake, "disc") && e.RotorMount == "")
		ask("axle", e.side, e.Axle == "")
	}
	ask("pedals", "", handled && t.Bike.Pedals == "")
	ask("shifting", "", handled && t.Bike.Shifting == "" && t.Bike.Electric != "yes")
	ask("derailleur", "", handled && t.Bike.Derailleur == "")
	ask("seatpost", "", handled && t.Bike.Post == "")
	ask("cockpit", "", handled && t.Bike.Cockpit == "")
	return out
}
