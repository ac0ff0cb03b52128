package words

// Words of the screen with what was chosen for this phone.
const (
	PhoneTitle    = "This phone"
	PhoneHeading  = "How Coilbook behaves on this phone"
	PhoneHint     = "Each choice counts at once and stays on this phone. No record changes."
	PhoneUnkept   = "This browser keeps no choices (private mode?). They hold until you close Coilbook."
	ToPhone       = "Set up this phone"
	ToPhoneHint   = "larger type, read aloud, screen on, units"
	ScreenTitle   = "On the screen"
	TypeTitle     = "Size of type"
	TypeNormal    = "Normal"
	TypeLarge     = "Large"
	BusyTitle     = "With your hands busy"
	AwakeName     = "Keep the screen on"
	AwakeHint     = "During a session; it may go dark again on the lists and the result."
	AwakeCannot   = "This browser cannot keep the screen on. Set a longer time in the phone's own settings."
	AloudName     = "Read aloud by itself"
	AloudHint     = "Each new check and each verdict. The button on a check reads it at any time."
	AloudTry      = "Hear how it sounds"
	VibrateName   = "Vibrate at a verdict"
	VibrateHint   = "In spec: one short. Out of spec: three long. Cannot tell: two short."
	VibrateTry    = "Feel the three"
	VibrateCannot = "This browser cannot vibrate."
	UnitsTitle    = "Units"
	GapUnits      = "Air gap and feeler gauge"
	GapMillis     = "mm"
	GapThous      = "thousandths of an inch"
	WarmthUnits   = "Temperature"
	UnitsHint     = "A reading that is typed with its unit, like 12 thou or 80 F, is always taken in that unit. Records keep what was typed."
	On            = "On"
	Off           = "Off"
	KeysTitle     = "Keys of a keyboard"
	KeysHint      = "A whole session can be done on one:"
)

// BeginOne leads from an empty list to what the machine is doing.
const BeginOne = "Begin a session"

// Key is a key and what it does.
type Key struct{ Keys, Does string }

// Keys are those that the screens listen to.
func Keys() []Key {
	return []Key{
		{"0 … 9 . ,", "type the reading of a check"},
		{"Enter", "enter it and go on; on a link or button, press it"},
		{"Backspace", "take back the last digit"},
		{"O", "open line"},
		{"W", "won't settle"},
		{"U", "the next unit"},
		{"Esc", "the check before"},
		{"Tab", "to the next link, button or field; with Shift the one before"},
	}
}

// Asleep says, once, that the screen may go dark.
const Asleep = "The phone does not keep its screen on just now, perhaps to save its battery. Tap it now and then."

// AsleepSeen puts that sentence away.
const AsleepSeen = "All right"

// Why nothing is read aloud.
const (
	NoVoice = "This phone has no voice of its own for the browser. One can often be added in the phone's settings for speech. " +
		"Voices that need the internet are not used."
	NoVoiceInLanguage = "This phone has no voice of its own in this language. One can often be added in the phone's settings for speech."
)
