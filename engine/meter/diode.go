package meter

import "coilbook/engine/quantity"

// usualDrive is that of a diode range: some 1 mA into a short, 2.5 to 3 V into
// nothing. Common practice; the handbook of one hand-held meter states at most
// 1.5 mA and 3 V, and ±(1.5 % + 5 digits).
var usualDrive = Drive{Volts: 2.8, Amps: 1e-3}

// diodeTop is where a diode range ends, in volts, whatever the counts: one silicon
// junction, or two in series, are shown, a line that is open is not. Common
// practice, no source.
const diodeTop = 2

// diodes is the one position of the dial. A meter of 1999 counts shows whole
// millivolts without saying so, the others volts. Common practice, no source.
func diodes(counts int, a Accuracy) []Range {
	r := decades(counts, quantity.Volts, a, diodeTop)
	r[0].Label = Diode.String()
	if counts == 1999 {
		r[0].Unit = quantity.Millivolts
	}
	return r
}
