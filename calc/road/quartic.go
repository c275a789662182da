package road

import (
	"math"
	"math/cmplx"
)

// quarticRoots finds the four complex roots of c[4] s^4 + ... + c[0], all coefficients positive, by Aberth's simultaneous
// iteration (Aberth 1973) on the polynomial scaled so that the product of its roots is 1. It does the same steps for the
// same input and stops when no root moves by more than a few last bits.
func quarticRoots(c [5]float64) [4]complex128 {
	scale := math.Sqrt(math.Sqrt(c[0] / c[4]))
	var a [5]complex128
	for i, power := 4, 1.0; i >= 0; i-- {
		a[i] = complex(c[i]/c[4]/power, 0)
		power *= scale
	}
	z := [4]complex128{0.5 + 0.9i, -0.9 + 0.4i, -0.5 - 0.9i, 0.9 - 0.4i}
	for range 100 {
		moved := 0.0
		for i := range z {
			step := aberthStep(a, z, i)
			z[i] -= step
			moved = math.Max(moved, magnitude(step)/magnitude(z[i]))
		}
		if moved < 1e-15 {
			break
		}
	}
	for i := range z {
		z[i] *= complex(scale, 0)
	}
	return z
}

// aberthStep is Newton's step at root i, corrected for the pull of the other roots.
func aberthStep(a [5]complex128, z [4]complex128, i int) complex128 {
	value, slope := a[4], complex128(0)
	for k := 3; k >= 0; k-- {
		slope = slope*z[i] + value
		value = value*z[i] + a[k]
	}
	var pull complex128
	for j := range z {
		if j != i && z[i] != z[j] {
			pull += 1 / (z[i] - z[j])
		}
	}
	if below := slope - value*pull; below != 0 {
		return value / below
	}
	return 0
}

// magnitude is a quick norm, within a factor sqrt(2) of the modulus; enough for stopping.
func magnitude(z complex128) float64 { return math.Abs(real(z)) + math.Abs(imag(z)) }

// averaged is E(x) = (e^x - 1 - x)/x^2, the moving average's part of each pole; a series near 0, where the difference
// would lose all its digits.
func averaged(x complex128) complex128 {
	if magnitude(x) >= 0.3 {
		return (cmplx.Exp(x) - 1 - x) / (x * x)
	}
	sum, term := complex(0, 0), complex(0.5, 0)
	for n := 3; n < 16; n++ {
		sum += term
		term *= x / complex(float64(n), 0)
	}
	return sum
}
