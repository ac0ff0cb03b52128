package circuit

import "math"

// table is the mean and the variance of the normalised current of one arrangement
// over two axes: across, the square root of the relative distance to cut-in, 0 to
// 1; and share, ωL/(R+ωL). The known way to zero at cut-in is taken out, so that
// what is left varies slowly but for one bend, on which there is a node: no cubic
// leads across it.
type table struct {
	cutIn            float64             // sink voltage above which no current can flow
	mean, variance   float64             // value of one step
	bends            [shareNodes]float64 // across, where bendNode is
	means, variances [shareNodes][acrossNodes]uint16
}

// stencil is the four nodes about a point of an axis and their weights: the cubic
// through them.
type stencil struct {
	first   int
	weights [4]float64
}

// around is for a point x of 0..1 and nodes from first on, evenly spaced over that.
func around(x float64, first, nodes int) stencil {
	x = math.Min(math.Max(x, 0), 1) * float64(nodes-1)
	skip := min(max(int(x)-1, 0), nodes-4)
	d := x - float64(skip)
	a, b, c, e := d, d-1, d-2, d-3
	return stencil{first + skip, [4]float64{-b * c * e / 6, a * c * e / 2, -a * b * e / 2, a * b * c / 6}}
}

func (t *table) across(x float64, share stencil) stencil {
	bend := 0.0
	for n, w := range share.weights {
		bend += w * t.bends[share.first+n]
	}
	if x < bend {
		return around(x/bend, 0, bendNode+1)
	}
	return around((x-bend)/(1-bend), bendNode, acrossNodes-bendNode)
}

// at is the normalised mean and variance.
func (t *table) at(distance float64, share stencil) (mean, variance float64) {
	across := math.Sqrt(distance)
	return t.on(distance, distance*across, t.across(across, share), share)
}

// on is the same on stencils of both axes; cube is the third power of across.
func (t *table) on(distance, cube float64, across, share stencil) (mean, variance float64) {
	for n, w := range share.weights {
		mean += w * across.of(&t.means[share.first+n])
		variance += w * across.of(&t.variances[share.first+n])
	}
	return math.Max(mean*t.mean*cube, 0), math.Max(variance*t.variance*cube*distance, 0)
}

func (s *stencil) of(row *[acrossNodes]uint16) float64 {
	v := (*[4]uint16)(row[s.first:])
	w := &s.weights
	return w[0]*float64(v[0]) + w[1]*float64(v[1]) + w[2]*float64(v[2]) + w[3]*float64(v[3])
}
