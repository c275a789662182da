package trial

import "math"

// Below is the share of Student's t distribution that lies below t, for degrees of freedom above 0, whole or not (Abramowitz and
// Stegun 26.7.1 with 26.5.27): 1 - I_x(f/2, 1/2)/2 with x = f/(f + t^2) for t > 0; near the middle from the other end of the same.
func Below(t, freedom float64) float64 {
	if t < 0 {
		return 1 - Below(-t, freedom)
	}
	if t*t < freedom {
		return 0.5 + incompleteBeta(0.5, freedom/2, t*t/(freedom+t*t))/2
	}
	return 1 - incompleteBeta(freedom/2, 0.5, freedom/(freedom+t*t))/2
}

// Quantile is the t below which a share of the distribution lies, the inverse of Below, for shares between 0 and 1.
func Quantile(share, freedom float64) float64 {
	if share < 0.5 {
		return -Quantile(1-share, freedom)
	}
	lo, hi := 0.0, 1.0
	for Below(hi, freedom) < share && hi < 1e12 {
		hi *= 2
	}
	// Down to neighbouring numbers, so that two machines agree.
	for mid := lo + (hi-lo)/2; mid > lo && mid < hi; mid = lo + (hi-lo)/2 {
		if Below(mid, freedom) < share {
			lo = mid
		} else {
			hi = mid
		}
	}
	return hi
}

// incompleteBeta is I_x(a, b), by the continued fraction of Abramowitz and Stegun 26.5.8, on the side where it converges fast.
func incompleteBeta(a, b, x float64) float64 {
	switch {
	case x <= 0:
		return 0
	case x >= 1:
		return 1
	case x > (a+1)/(a+b+2):
		return 1 - incompleteBeta(b, a, 1-x) // 26.5.2
	}
	gammaA, _ := math.Lgamma(a)
	gammaB, _ := math.Lgamma(b)
	gammaSum, _ := math.Lgamma(a + b)
	front := math.Exp(gammaSum - gammaA - gammaB + a*math.Log(x) + b*math.Log1p(-x))
	return front / a / fraction(a, b, x)
}

// fraction is 1 + d1/(1 + d2/(1 + ...)) of 26.5.8, taken forward (modified Lentz: Thompson and Barnett 1986) until it stands.
func fraction(a, b, x float64) float64 {
	const most, tiny = 1000, 1e-300
	out, c, d := 1.0, 1.0, 0.0
	for k := 1; k <= most; k++ {
		term := coefficient(k, a, b, x)
		if d = 1 + term*d; math.Abs(d) < tiny {
			d = tiny
		}
		if c = 1 + term/c; math.Abs(c) < tiny {
			c = tiny
		}
		d = 1 / d
		out *= c * d
		if math.Abs(c*d-1) < 1e-16 {
			break
		}
	}
	return out
}

// coefficient is d_k of 26.5.8.
func coefficient(k int, a, b, x float64) float64 {
	m := float64(k / 2)
	if k%2 == 0 {
		return m * (b - m) * x / ((a + 2*m - 1) * (a + 2*m))
	}
	return -(a + m) * (a + b + m) * x / ((a + 2*m) * (a + 2*m + 1))
}
