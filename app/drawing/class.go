package drawing

// Classes lists every class that a shape may have; the style sheet gives each
// its colour in the light and in the dark theme.
var Classes = []string{
	// Filled.
	"paper", "metal", "iron", "magnet", "bare", "copper", "wrap", "plug", "hole", "pin", "tip",
	"probe-red", "probe-black", "case", "meter", "screen", "dial", "leaf", "sign-accent",
	// Lines.
	"turn", "wrap-turn", "casing", "lead-grey", "lead-live", "cable-red", "cable-black", "ring-red", "ring-black",
	"ink", "accent", "halo", "needle", "verdict", "verdict-dashed", "verdict-dotted",
	"wire-edge", "wire-black", "wire-brown", "wire-red", "wire-orange", "wire-yellow", "wire-green", "wire-light-green",
	"wire-blue", "wire-light-blue", "wire-violet", "wire-grey", "wire-white", "wire-pink",
	// Words.
	"label", "label-soft", "label-accent", "on-red", "on-black", "on-screen",
}
