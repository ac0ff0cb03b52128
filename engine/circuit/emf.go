package circuit

import "math"

// Frequency is that of a generator in hertz, from its number of poles (not of pole
// pairs) and its speed in revolutions per minute: poles·rpm/120.
func Frequency(poles, rpm float64) float64 { return poles * rpm / 120 }

// Speed is the revolutions per minute at a frequency in hertz. NaN without poles.
func Speed(poles, hertz float64) float64 {
	if !(poles > 0) {
		return math.NaN()
	}
	return 120 * hertz / poles
}

// EMF is the rms open-circuit voltage of a winding in a sinusoidal flux:
// √2·π·f·N·k·Φ, the textbooks' 4.44·f·N·k·Φ. Turns are in series, winding is the
// winding factor (0 to 1), webers the flux per pole. Open-circuit voltage is
// proportional to speed, so windings compare by volts per revolution.
func EMF(hertz, turns, winding, webers float64) float64 {
	return math.Sqrt2 * math.Pi * hertz * turns * winding * webers
}

// Rectified is the mean of a rectified sinusoid, over its rms value: ideal diodes,
// and no inductance before a resistor. It does not hold into a battery, which sets
// the voltage and leaves the current open.
type Rectified float64

// Of the line voltage for three phases, else of the coil's.
const (
	ThreePhaseMean Rectified = 3 * math.Sqrt2 / math.Pi
	FullWaveMean   Rectified = 2 * math.Sqrt2 / math.Pi
	HalfWaveMean   Rectified = math.Sqrt2 / math.Pi
)

// Of is the mean in volts for an rms value in volts.
func (r Rectified) Of(rms float64) float64 { return float64(r) * rms }

// Energy is that of a charged capacitor in joules: CV²/2.
func Energy(farads, volts float64) float64 { return farads * volts * volts / 2 }
