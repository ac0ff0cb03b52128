package assess

import (
	"math"
	"slices"
	"strings"

	"coilbook/engine/check"
	"coilbook/engine/meter"
	"coilbook/engine/quantity"
	"coilbook/engine/spec"
	"coilbook/engine/uncertainty"
	"coilbook/engine/winding"
)

// phaseHeat is how far two phases of one winding may differ in temperature, in
// kelvin to either side, where the core has come to rest. An assumption, no
// source.
const phaseHeat = 2

// voltAmp works out the resistance behind each pair of drops, in the order of
// the plan; missing counts the pairs of drops that are not both numbers.
//
// R = R_known · V_winding / V_known: one current flows through both, so nothing
// of it need be known, and on one range the meter's gain cancels. The known
// resistor's tolerance is common to all and cancels between them. Probe and clip
// contacts are outside of what is measured.
func (b Bench) voltAmp(lines []Line) (pairs []Line, missing int) {
	for i := 0; i+1 < len(lines); i++ {
		known, drop := lines[i], lines[i+1]
		if known.Check.Measures != spec.ResistorDrop || drop.Check.Measures != spec.WindingDrop {
			continue
		}
		ohms, ok := b.ohmsFrom(known, drop)
		if !ok {
			missing++
			continue
		}
		pairs = append(pairs, b.derived(ohmsCheck(drop.Check), ohms))
	}
	return pairs, missing
}

// ohmsCheck names what a pair of drops tells.
func ohmsCheck(drop check.Check) check.Check {
	c := drop
	c.ID, c.Feeds, c.Function, c.Measures = "volt-amp-"+check.ID(strings.TrimPrefix(string(drop.ID), "volt-amp-winding-")), false, meter.Ohms, spec.ChargePair
	if drop.Black == check.Core {
		c.Measures = spec.ChargeGrounded
	}
	return c
}

// Probes turned round are no fault: only the sizes of the drops count.
func (b Bench) ohmsFrom(known, drop Line) (meter.Measurement, bool) {
	kit := b.State.Setup.Kit
	if !known.Read() || !drop.Read() || known.Measured.State != quantity.Number || drop.Measured.State != quantity.Number ||
		TooSmall(known) || TooSmall(drop) || kit == nil || !(kit.ResistorOhms > 0) {
		return meter.Measurement{}, false
	}
	k, w := sized(known.Measured), sized(drop.Measured)
	perVolt := kit.ResistorOhms / k.Value
	// What is worked out stands on no range: pairs read on different ones can be
	// compared.
	out := meter.Measurement{State: quantity.Number, Zeroed: true}
	out.Value = perVolt * w.Value
	out.Shown = out.Value
	out.Gain = uncertainty.Rectangular(kit.ResistorPercent / 100)
	own := perVolt * math.Hypot(digitsDoubt(w), digitsDoubt(k)*w.Value/k.Value)
	if k.Range.Label != w.Range.Label { // two ranges have two gains
		own = math.Hypot(own, out.Value*math.Hypot(k.Gain, w.Gain))
	}
	heat := out.Value * winding.RelativeDoubt(b.Air.At, phaseHeat) / math.Sqrt2 // two phases have it in full between them
	out.Own = math.Hypot(own, heat)
	out.Std = math.Hypot(out.Own, out.Gain*out.Value)
	return out, true
}

func sized(m meter.Measurement) meter.Measurement {
	m.Value, m.Shown = math.Abs(m.Value), math.Abs(m.Shown)
	return m
}

// leastDigits is how many digits a drop must show to be one: less is a dark bulb
// or a probe beside the metal. An assumption, no source.
const leastDigits = 20

// TooSmall reports a drop that shows no current, or no contact.
func TooSmall(l Line) bool {
	m := l.Measured
	drop := l.Check.Measures == spec.ResistorDrop || l.Check.Measures == spec.WindingDrop
	return drop && m.State == quantity.Number && !(math.Abs(m.Value) >= leastDigits*m.Range.Step)
}

// digitsDoubt is the doubt of a reading without its range's gain: what the data
// sheet gives in digits, in full for each reading although part of it is an
// offset common to all, and what repeats scatter beyond the last digit.
func digitsDoubt(m meter.Measurement) float64 {
	digits := uncertainty.Rectangular(m.Bound) - m.Gain*math.Abs(m.Shown)
	resolution := uncertainty.Resolution(m.Range.Step)
	return math.Hypot(max(digits, 0), math.Sqrt(max(m.Own*m.Own-resolution*resolution, 0)))
}

// derived is a line whose value was worked out.
func (b Bench) derived(c check.Check, m meter.Measurement) Line {
	l := Line{Check: c, Answered: true, Derived: true, Measured: m, Air: b.Air}
	if limit, ok := b.Profile.Limit(c.Measures); ok {
		l.Verdict = spec.Judge(limit, m, b.Air)
	} else {
		l.Verdict = spec.NoLimitFor(m)
	}
	l.Verdict.Remedies = slices.DeleteFunc(l.Verdict.Remedies, func(r spec.Remedy) bool {
		return r == spec.VoltAmp || r == spec.ZeroLeads // what was done, and what does not count here
	})
	return l
}
