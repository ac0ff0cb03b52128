package machine

import (
	"math"
	"math/rand/v2"
)

// Chance is a seeded stream of numbers: the same seed gives the same machine on
// every phone, but for a last digit that processors round differently. Its bits
// are the published PCG of the Go library.
type Chance struct{ bits *rand.PCG }

// NewChance starts a stream.
func NewChance(seed uint64) Chance { return Chance{rand.NewPCG(seed, 0x9e3779b97f4a7c15)} }

// Beside is a stream of its own that takes nothing from this one: what is drawn
// from it leaves all that comes after as it was.
func (c Chance) Beside() Chance {
	own := *c.bits
	return NewChance(own.Uint64() ^ 0x5ca1ab1e)
}

// Uniform is a number from 0 up to 1.
func (c Chance) Uniform() float64 { return float64(c.bits.Uint64()>>11) / (1 << 53) }

// Pick is a whole number from 0 up to n.
func (c Chance) Pick(n int) int { return min(int(c.Uniform()*float64(n)), n-1) }

// Between is a number in a span, evenly.
func (c Chance) Between(low, high float64) float64 { return low + c.Uniform()*(high-low) }

// Normal is a standard normal number (the cosine half of Box and Muller's).
func (c Chance) Normal() float64 {
	r := math.Sqrt(-2 * math.Log(1-c.Uniform()))
	return r * math.Cos(2*math.Pi*c.Uniform())
}

// About is a positive number spread around 1 by a relative standard deviation.
func (c Chance) About(spread float64) float64 { return math.Exp(spread * c.Normal()) }

// Drawn is a sound machine of a build as one may meet it: every figure of the
// typical machine spread as such machines are. The spreads: assumptions, no
// source.
func Drawn(b Build, c Chance) Machine {
	m := Typical(b)
	m.Ambient = c.Between(5, 32)
	m.Rise = c.Between(45, 90)
	m.Magnets.Flux *= c.About(0.10)
	winding, unlike := c.About(0.25), 0.01
	for i := range m.Phases {
		m.Phases[i] = m.Phases[i].turned(math.Sqrt(winding)).spread(c, unlike)
	}
	m.Lighting = m.Lighting.spread(c, 0.2)
	m.Exciter = m.Exciter.turned(math.Sqrt(c.About(0.3))).spread(c, 0.05)
	pickup := math.Sqrt(c.About(0.25))
	for i := range m.Pickups {
		m.Pickups[i] = m.Pickups[i].turned(pickup).spread(c, 0.03)
	}
	m.Reluctor.Flux *= c.About(0.15)
	m.Reluctor.Gap *= c.About(0.2)
	m.Regulator.SetPoint += 0.15 * c.Normal()
	m.Regulator.Ground.Ohms *= c.About(0.4)
	m.Battery.Charge = c.Between(0.6, 0.98)
	m.Battery.Ohms *= c.About(0.25)
	m.Battery.Accept *= c.About(0.3)
	m.Harness.spread(c)
	m.Starter.Ohms *= c.About(0.1)
	m.Starter.PerVolt *= c.About(0.1)
	m.Box.Trigger *= c.About(0.15)
	m.Box.Input *= c.About(0.3)
	m.Box.Volts *= c.About(0.08)
	m.Spark.Primary = m.Spark.Primary.turned(math.Sqrt(c.About(0.3)))
	m.Spark.Secondary = m.Spark.Secondary.spread(c, 0.2)
	m.Spark.Cap *= c.About(0.05)
	m.Regulator.Silicon = m.Regulator.Silicon.spread(c.Beside())
	return m
}

func (c Coil) spread(chance Chance, by float64) Coil {
	c.Ohms *= chance.About(by)
	c.Henry *= chance.About(by)
	return c
}

func (h *Harness) spread(c Chance) {
	for i := range h.ChargePins {
		h.ChargePins[i].Ohms *= c.About(0.4)
	}
	for _, p := range []*Contact{&h.OtherPins, &h.Feed, &h.Fuse, &h.Plus, &h.Minus, &h.Strap, &h.Key, &h.GroundLead} {
		p.Ohms *= c.About(0.4)
	}
	h.Drain *= c.About(0.5)
	h.Lamp *= c.About(0.1)
}

// Sized is a fault of a kind on a build, with the size that such faults have, or
// ok is false where the build has no such part. The sizes: assumptions, no source.
func (c Chance) Sized(k Kind, b Build) (f Fault, ok bool) {
	f = Fault{Kind: k, At: 1}
	if n := Sites(k, b); n > 0 {
		f.At = 1 + c.Pick(n)
	}
	f.Size = Size(k, b, c.Uniform())
	return f, f.Suits(b)
}

// Sites is at how many places a fault of a kind can sit on a build, 0 for one
// that has no place to name.
func Sites(k Kind, b Build) int {
	switch k {
	case PhaseOpen, PhaseToCore, PhaseShorted, PhaseJoint:
		return b.Charge.Phases()
	case PhaseToPhase:
		return b.Charge.Leads() - 1
	case ChargePin:
		return b.Charge.Leads()
	case DiodeIsOpen, DiodeIsShorted:
		if b.Regulating == HalfWave {
			return 1
		}
		return 2 * b.Charge.Leads()
	}
	return 0
}

// Size is that of a fault of a kind that is graver than a share of such faults,
// from 0 to 1.
func Size(k Kind, b Build, share float64) float64 {
	span := map[Kind][2]float64{
		PhaseToCore: {0.05, 0.95}, PhaseShorted: {0.1, 0.35}, PhaseJoint: {0.4, 3}, WeakMagnets: {0.3, 0.6},
		RegulatorGround: {0.3, 2}, ChargePin: {0.5, 5}, FeedWire: {0.3, 3}, BatteryTerminal: {0.05, 0.6}, Sulphated: {5, 20},
		FlatBattery: {0, 0.2}, Drain: {0.03, 0.5}, GroundStrap: {0.1, 1}, PickupShorted: {0.2, 0.7}, GapWide: {0.6e-3, 2e-3},
		PlugPin: {50, 5000}, ExciterShorted: {0.2, 0.6}, KillWire: {0.1, 50}, PrimaryShorted: {0.3, 0.8}, SecondaryTurns: {0.3, 0.8},
		PlugFouled: {5e3, 100e3}, IgnitionGround: {20, 2000}, BoxFeed: {10, 200},
	}[k]
	if k == LowSetPoint {
		return float64(b.Volts) * (1.09 - share*(1.09-1.04))
	}
	return span[0] + share*(span[1]-span[0])
}

// spread: a large die drops less at 1 mA than a small one. Volts of 0.4 to 0.65, as
// handbooks of meters give for sound silicon or somewhat below, and emission
// coefficients between 1 and 2. Spreads: assumptions, no source.
func (s Silicon) spread(c Chance) Silicon {
	s.Volts += 0.045 * min(max(c.Normal(), -2.5), 2.5)
	s.Emission = c.Between(1.4, 1.95)
	return s
}
