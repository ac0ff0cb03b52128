package rig

import (
	"math"
	"slices"

	"coilbook/engine/machine"
	"coilbook/engine/transient"
)

// emfOf gives the voltage of a share of the turns.
type emfOf func(share float64) transient.Source

// wireCoil lays a coil between two nodes: the joint at its first end, then its
// wire in stretches. It is cut where it touches the core and where shorted turns
// begin, which lie at its far end. It gives the branch at its beginning.
func (r *Rig) wireCoil(first, last transient.Node, coil machine.Coil, emf emfOf) transient.Branch {
	first = r.joint(first, coil.Joint)
	c := r.cut(coil)
	at := map[float64]transient.Node{0: first, 1: last}
	for _, place := range c.places[1 : len(c.places)-1] {
		at[place] = r.c.Node("")
	}
	if t := coil.Ground; !math.IsInf(t.Ohms, 1) {
		r.join(at[clamp(t.At)], transient.Ground, t.Ohms)
	}
	if s := coil.Short; s.Share > 0 {
		r.join(at[clamp(1-s.Share)], last, s.Ohms)
	}
	var branches []transient.Branch
	for i := 0; i+1 < len(c.places); i++ {
		a, b := c.places[i], c.places[i+1]
		if i+2 < len(c.places) && c.within(b) {
			end := c.places[i+2]
			branches = append(branches, r.pile(at[a], at[b], at[end], coil, b-a, end-b, emf))
			i++
			continue
		}
		branches = append(branches, r.c.Winding(at[a], at[b], emf(b-a), coil.Ohms*(b-a), coil.Henry*(b-a)))
	}
	return branches[0]
}

// joint puts what is in series before a coil; a broken one leaves it hanging.
func (r *Rig) joint(first transient.Node, ohms float64) transient.Node {
	if ohms == 0 {
		return first
	}
	inside := r.c.Node("")
	r.join(first, inside, ohms)
	return inside
}

// cuts are the places where a coil's wire is parted, as shares of its length from
// 0 to 1: at its faults, and at both ends of a pile that has one within.
type cuts struct {
	places []float64
	piles  float64
}

func (r *Rig) cut(coil machine.Coil) cuts {
	c := cuts{places: []float64{0, 1}, piles: float64(max(coil.Short.Piles, 1))}
	if !math.IsInf(coil.Ground.Ohms, 1) {
		c.add(clamp(coil.Ground.At))
	}
	if coil.Short.Share > 0 {
		c.add(clamp(1 - coil.Short.Share))
	}
	return c
}

func (c *cuts) add(place float64) {
	c.places = append(c.places, place)
	if c.within(place) {
		c.places = append(c.places, math.Floor(place*c.piles)/c.piles, math.Ceil(place*c.piles)/c.piles)
	}
	slices.Sort(c.places)
	c.places = slices.CompactFunc(c.places, func(a, b float64) bool { return a == b })
}

// within reports whether a place lies inside a pile, not between two.
func (c *cuts) within(place float64) bool {
	return math.Abs(place*c.piles-math.Round(place*c.piles)) > 1e-9
}

func clamp(share float64) float64 { return min(max(share, 0), 1) }

// pile is two stretches of one pile's turns, which share its flux: their
// inductances go with the square of their turns.
func (r *Rig) pile(a, b, c transient.Node, coil machine.Coil, one, two float64, emf emfOf) transient.Branch {
	piles := float64(max(coil.Short.Piles, 1))
	henry := coil.Henry * piles // of one pile, for its turns as a share of all
	inA, inB := r.c.Node(""), r.c.Node("")
	branch := r.c.Supply(a, inA, emf(one), coil.Ohms*one/2)
	r.c.Supply(b, inB, emf(two), coil.Ohms*two/2)
	r.c.Coupled(inA, b, inB, c, coil.Ohms*one/2, henry*one*one, coil.Ohms*two/2, henry*two*two, machine.PileCoupling)
	return branch
}
