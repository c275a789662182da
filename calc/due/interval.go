package due

// Intervals in days, editable; the spokes of a new wheel go by distance.
type Intervals struct {
	Sealant, SealantHot, Rotor, Pads, Spokes, Bolts, Look int
	NewSpokesKM                                           float64
}

// What is asked when nobody has chosen otherwise.
const (
	SealantDays    = 60    // common practice, sources vary: it lasts 2 to 7 months
	SealantHotDays = 30    // common practice: 1 to 3 months where it is hot and dry
	RotorDays      = 90    // our choice
	PadsDays       = 60    // our choice
	SpokesDays     = 365   // our choice
	NewSpokesKM    = 100.0 // published, owner's manual
	BoltsDays      = 90    // our choice
	LookDays       = 30    // our choice
)

// GrowDays is how long a tyre grows after it was fitted: its width is taken again then (our choice, common practice).
const GrowDays = 7

// Usual are the intervals in use until somebody edits them.
func Usual() Intervals {
	return Intervals{
		Sealant: SealantDays, SealantHot: SealantHotDays, Rotor: RotorDays, Pads: PadsDays, Spokes: SpokesDays, Bolts: BoltsDays,
		Look: LookDays, NewSpokesKM: NewSpokesKM,
	}
}
