package fault

import (
	"slices"
	"strings"

	"coilbook/engine/check"
)

// Parts is the set of parts that are at fault: none, one or two. Equal sets are
// equal values, so that a set can be the key of a map.
type Parts struct{ first, second check.Part }

// PartsOf is the set of these parts; what stands twice or is "" counts once or not
// at all. It panics for more than two: no fault of the catalogue is of more.
func PartsOf(parts ...check.Part) Parts {
	list := slices.Compact(slices.Sorted(slices.Values(parts)))
	list = slices.DeleteFunc(list, func(p check.Part) bool { return p == "" })
	var out Parts
	switch len(list) {
	case 0:
	case 1:
		out.first = list[0]
	case 2:
		out.first, out.second = list[0], list[1]
	default:
		panic("a fault of more than two parts")
	}
	return out
}

// List is the parts in the order of their names; empty for no fault.
func (s Parts) List() []check.Part {
	return slices.DeleteFunc([]check.Part{s.first, s.second}, func(p check.Part) bool { return p == "" })
}

// Size is how many they are.
func (s Parts) Size() int { return len(s.List()) }

// None reports the set without a part: no fault.
func (s Parts) None() bool { return s.first == "" }

// Has reports whether a part is one of them.
func (s Parts) Has(p check.Part) bool { return p != "" && (s.first == p || s.second == p) }

// Within reports whether all of them are in another set.
func (s Parts) Within(other Parts) bool {
	return !slices.ContainsFunc(s.List(), func(p check.Part) bool { return !other.Has(p) })
}

// Compare orders sets, for lists that always come out alike.
func (s Parts) Compare(other Parts) int { return slices.Compare(s.List(), other.List()) }

// String joins the parts' ids.
func (s Parts) String() string {
	var out []string
	for _, p := range s.List() {
		out = append(out, string(p))
	}
	return strings.Join(out, " and ")
}
