package words

// Words of the screen with what was chosen for this phone.
var (
	PhoneTitle    = say("This phone")
	PhoneHeading  = say("How Coilbook behaves on this phone")
	PhoneHint     = say("Each choice counts at once and stays on this phone. No record changes.")
	PhoneUnkept   = say("This browser keeps no choices (private mode?). They hold until you close Coilbook.")
	ToPhone       = say("Set up this phone")
	ToPhoneHint   = say("larger type, read aloud, screen on, units")
	ScreenTitle   = say("On the screen")
	TypeTitle     = say("Size of type")
	TypeNormal    = say("Normal")
	TypeLarge     = say("Large")
	BusyTitle     = say("With your hands busy")
	AwakeName     = say("Keep the screen on")
	AwakeHint     = say("During a session; it may go dark again on the lists and the result.")
	AwakeCannot   = say("This browser cannot keep the screen on. Set a longer time in the phone's own settings.")
	AloudName     = say("Read aloud by itself")
	AloudHint     = say("Each new check and each verdict. The button on a check reads it at any time.")
	AloudTry      = say("Hear how it sounds")
	VibrateName   = say("Vibrate at a verdict")
	VibrateHint   = say("In spec: one short. Out of spec: three long. Cannot tell: two short.")
	VibrateTry    = say("Feel the three")
	VibrateCannot = say("This browser cannot vibrate.")
	UnitsTitle    = say("Units")
	GapUnits      = say("Air gap and feeler gauge")
	GapMillis     = "mm"
	GapThous      = say("thousandths of an inch")
	WarmthUnits   = say("Temperature")
	UnitsHint     = say("A reading that is typed with its unit, like 12 thou or 80 F, is always taken in that unit. Records keep what was typed.")
	On            = say("On")
	Off           = say("Off")
	KeysTitle     = say("Keys of a keyboard")
	KeysHint      = say("A whole session can be done on one:")
)

// BeginOne leads from an empty list to what the machine is doing.
var BeginOne = say("Begin a session")

// Key is a key and what it does.
type Key struct{ Keys, Does string }

// Keys are those that the screens listen to.
func Keys() []Key {
	return []Key{
		{"0 … 9 . ,", say("type the reading of a check")},
		{say("Enter"), say("enter it and go on; on a link or button, press it")},
		{say("Backspace"), say("take back the last digit")},
		{"O", say("open line")},
		{"W", say("won't settle")},
		{"U", say("the next unit")},
		{say("Esc"), say("the check before")},
		{say("Tab"), say("to the next link, button or field; with Shift the one before")},
	}
}

// Asleep says, once, that the screen may go dark.
var Asleep = say("The phone does not keep its screen on just now, perhaps to save its battery. Tap it now and then.")

// AsleepSeen puts that sentence away.
var AsleepSeen = say("All right")

// Why nothing is read aloud.
var (
	NoVoice           = say("This phone has no voice of its own for the browser. One can often be added in the phone's settings for speech. Voices that need the internet are not used.")
	NoVoiceInLanguage = say("This phone has no voice of its own in this language. One can often be added in the phone's settings for speech.")
)
