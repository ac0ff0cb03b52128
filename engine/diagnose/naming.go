package diagnose

import (
	"slices"

	"coilbook/engine/check"
	"coilbook/engine/fault"
)

// naming is how sets of parts with their weights become the name of what is at fault.
// Its columns are those of a table: a set each, and an unlisted fault at the end. No
// fault and an unlisted one stand there like parts of their own.
type naming struct {
	sets    []fault.Parts
	columns []pair
	parts   []check.Part
}

// pair is the numbers of one or two parts; the second is alone where there is one.
type pair [2]int

// alone stands for the second part of a set of one.
const alone = -1

// mostParts is beyond how many there are, with no fault and an unlisted one.
const mostParts = 32

func namingOf(sets []fault.Parts) naming {
	n := naming{sets: sets, parts: []check.Part{""}}
	for _, s := range sets {
		n.parts = append(n.parts, s.List()...)
	}
	slices.Sort(n.parts)
	n.parts = slices.Compact(n.parts)
	for _, s := range sets {
		column := pair{0, alone}
		for i, p := range s.List() {
			column[i] = slices.Index(n.parts, p)
		}
		n.columns = append(n.columns, column)
	}
	n.columns = append(n.columns, pair{len(n.parts), alone})
	return n
}

// named is what is said to be at fault.
type named struct {
	lead, second int     // numbers of parts
	leads        float64 // weight of the sets with the first
	sure         float64 // weight of the sets with all that is named
	right        float64 // weight of the sets, a set that is named in part by its share
}

// name gives the likeliest part, and a second one if that is at fault as well in half
// of the cases or more. Weights are by column; those left out at the end count for
// nothing.
func (n naming) name(weights []float64) named {
	var by [mostParts]float64
	for c, w := range weights {
		for _, p := range n.columns[c] {
			if p != alone {
				by[p] += w
			}
		}
	}
	out := named{second: alone}
	for p, w := range by[:len(n.parts)+1] {
		if w > by[out.lead] {
			out.lead = p
		}
	}
	out.leads = by[out.lead]
	most := out.leads / 2
	for c, w := range weights {
		if other := n.columns[c].without(out.lead); other != alone && w >= most && w > 0 {
			out.second, most = other, w
		}
	}
	for c, w := range weights {
		if n.columns[c].has(out.lead) && (out.second == alone || n.columns[c].has(out.second)) {
			out.sure += w
		}
		out.right += w * n.columns[c].match(out.lead, out.second)
	}
	return out
}

// set is what is named, as a set.
func (n naming) set(x named) fault.Parts {
	if x.second == alone {
		return fault.PartsOf(n.parts[x.lead])
	}
	return fault.PartsOf(n.parts[x.lead], n.parts[x.second])
}

func (c pair) has(p int) bool { return c[0] == p || c[1] == p }

// without is the other one of two; alone where there is none, or p is not one of them.
func (c pair) without(p int) int {
	switch {
	case c[1] == alone:
		return alone
	case c[0] == p:
		return c[1]
	case c[1] == p:
		return c[0]
	}
	return alone
}

// match is 1 for the set that is named, less a half for each part that is in one of
// the two alone, but never below 0: such a part is bought for nothing, or looked for
// once more.
func (c pair) match(lead, second int) float64 {
	off := 0
	for _, p := range c {
		if p != alone && p != lead && p != second {
			off++
		}
	}
	for _, p := range [...]int{lead, second} {
		if p != alone && !c.has(p) {
			off++
		}
	}
	return max(1-float64(off)/2, 0)
}
