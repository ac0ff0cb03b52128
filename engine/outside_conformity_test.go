package engine_test

import (
	"math"

	"coilbook/engine/spec"
)

func init() {
	register(map[string]computation{
		"conformance probability": func(in *inputs) answers {
			return answers{"pc": conformance(in)}
		},
		"three-way decision":         threeWay,
		"consumer and producer risk": risks,
		"normal quantile": func(in *inputs) answers {
			return only(quantile(in.number("pc")))
		},
		"largest false acceptance": func(in *inputs) answers {
			inside := in.number("w_over_U") * in.number("k") // of the limit at 0, with u = 1
			return only(1 - spec.Conformance(-inside, 1, math.Inf(-1), 0))
		},
	})
}

func conformance(in *inputs) float64 {
	return spec.Conformance(in.number("y"), in.number("u"),
		in.numberOr("TL", math.Inf(-1)), in.numberOr("TU", math.Inf(1)))
}

// outcomes translates the words of the standards into those of the app.
var outcomes = map[spec.Outcome]string{
	spec.InSpec:     "accept",
	spec.OutOfSpec:  "reject",
	spec.CannotTell: "undecided",
}

func threeWay(in *inputs) answers {
	accept, reject := in.number("accept_if_pc_ge"), in.number("reject_if_pc_le")
	in.must(spec.Decide(accept) == spec.InSpec && spec.Decide(accept-1e-9) == spec.CannotTell,
		"the app accepts from the probability given")
	in.must(spec.Decide(reject) == spec.OutOfSpec && spec.Decide(reject+1e-9) == spec.CannotTell,
		"the app rejects up to the probability given")
	pc := conformance(in)
	return answers{"pc": pc, "decision": outcomes[spec.Decide(pc)]}
}

// quantile undoes the conformance probability below an upper limit.
func quantile(p float64) float64 {
	low, high := -10.0, 10.0
	for range 60 {
		middle := (low + high) / 2
		if spec.Conformance(0, 1, math.Inf(-1), middle) < p {
			low = middle
		} else {
			high = middle
		}
	}
	return low
}

// risks is JCGM 106:2012 clause 9.5 (from memory): parts vary as u0 around nominal,
// a meter with um accepts those that read within A, while T is what is wanted.
func risks(in *inputs) answers {
	nominal, u0, um, wanted, accepted := in.number("nominal"), in.number("u0"), in.number("um"), in.number("T"), in.number("A")
	joint := func(x float64, takes bool) float64 { // density of a part at x that is taken, or is not
		z := (x - nominal) / u0
		p := spec.Conformance(x, um, nominal-accepted, nominal+accepted)
		if !takes {
			p = 1 - p
		}
		return p * math.Exp(-z*z/2) / (u0 * math.Sqrt(2*math.Pi))
	}
	bad := func(x float64) float64 { return joint(x, true) }
	lost := func(x float64) float64 { return joint(x, false) }
	low, high, far := nominal-wanted, nominal+wanted, 9*u0
	return answers{
		"Rc": integral(bad, low-far, low) + integral(bad, high, high+far),
		"Rp": integral(lost, low, high),
	}
}

// integral is by Simpson's rule.
func integral(f func(float64) float64, from, to float64) float64 {
	const n = 2000
	h := (to - from) / n
	sum := f(from) + f(to)
	for i := 1; i < n; i++ {
		sum += float64(2+2*(i%2)) * f(from+float64(i)*h)
	}
	return sum * h / 3
}
