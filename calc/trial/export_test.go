package trial

// Plainly compares with Welch's count of the degrees of freedom alone.
func Plainly(first, second Arm, level float64) Result {
	r, _ := compare(first, second, level, WelchOf(first, second))
	return r
}

// WelchOf is that count.
func WelchOf(first, second Arm) float64 {
	c := counts{float64(first.Runs - 1), float64(second.Runs - 1)}
	return c.welch(first.Variance/float64(first.Runs), second.Variance/float64(second.Runs))
}

// Freedom is what Compare counts with.
var Freedom = freedom

// FreedomOf is the same for many arms of so many runs each: how much of Welch's count is believed depends on their number alone.
func FreedomOf(first, second int, level float64) func(a, b Arm) float64 {
	c := counts{float64(first - 1), float64(second - 1)}
	doubt := c.doubt(level)
	return func(a, b Arm) float64 { return c.between(WelchOf(a, b), doubt) }
}
