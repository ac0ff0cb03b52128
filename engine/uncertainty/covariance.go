package uncertainty

import (
	"fmt"
	"math"
)

// Covariance is the symmetric matrix of variances (on the diagonal) and
// covariances of some quantities. Element i, j has the unit of quantity i times
// that of quantity j.
type Covariance [][]float64

// Certain is the covariance of n quantities known without doubt: all zeros.
func Certain(n int) Covariance {
	c := make(Covariance, n)
	for i := range c {
		c[i] = make([]float64, n)
	}
	return c
}

// Independent is the covariance of quantities with the given standard
// uncertainties and nothing in common.
func Independent(u ...float64) Covariance {
	c := Certain(len(u))
	for i := range u {
		c[i][i] = u[i] * u[i]
	}
	return c
}

// Common is the covariance that one shared cause, with standard uncertainty u,
// brings to quantities that answer to it with the given sensitivities (GUM
// F.1.2.3). A meter's gain error has the readings themselves as sensitivities;
// its offset has ones.
func Common(u float64, sensitivity ...float64) Covariance {
	c := Certain(len(sensitivity))
	for i := range c {
		for j := range c {
			c[i][j] = sensitivity[i] * sensitivity[j] * u * u
		}
	}
	return c
}

// Plus is the covariance of c and other acting together, each unaware of the
// other.
func (c Covariance) Plus(other Covariance) Covariance {
	mustMatch("two covariances", len(c), len(other))
	sum := Certain(len(c))
	for i := range sum {
		for j := range sum {
			sum[i][j] = c[i][j] + other[i][j]
		}
	}
	return sum
}

// U is the standard uncertainty of quantity i.
func (c Covariance) U(i int) float64 {
	if c[i][i] < 0 { // rounding, where correlated terms cancel to nothing
		return 0
	}
	return math.Sqrt(c[i][i])
}

// R is the correlation coefficient of quantities i and j (GUM 5.2.2), from -1
// to 1. A quantity without doubt is correlated with nothing.
func (c Covariance) R(i, j int) float64 {
	scale := c.U(i) * c.U(j)
	if scale == 0 {
		return 0
	}
	return c[i][j] / scale
}

func mustMatch(what string, a, b int) {
	if a != b {
		panic(fmt.Sprintf("uncertainty: %s differ in length: %d and %d", what, a, b))
	}
}
