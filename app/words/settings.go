package words

// Words of the screen with what was chosen for this phone.
var (
	PhoneTitle    = text("This phone")
	PhoneHeading  = text("How Coilbook behaves on this phone")
	PhoneHint     = text("Each choice counts at once and stays on this phone. No record changes.")
	PhoneUnkept   = text("This browser keeps no choices (private mode?). They hold until you close Coilbook.")
	ToPhone       = text("Set up this phone")
	ToPhoneHint   = text("larger type, read aloud, screen on, units")
	ScreenTitle   = text("On the screen")
	TypeTitle     = text("Size of type")
	TypeNormal    = text("Normal")
	TypeLarge     = text("Large")
	BusyTitle     = text("With your hands busy")
	AwakeName     = text("Keep the screen on")
	AwakeHint     = text("During a session; it may go dark again on the lists and the result.")
	AwakeCannot   = text("This browser cannot keep the screen on. Set a longer time in the phone's own settings.")
	AloudName     = text("Read aloud by itself")
	AloudHint     = text("Each new check and each verdict. The button on a check reads it at any time.")
	AloudTry      = text("Hear how it sounds")
	VibrateName   = text("Vibrate at a verdict")
	VibrateHint   = text("In spec: one short. Out of spec: three long. Cannot tell: two short.")
	VibrateTry    = text("Feel the three")
	VibrateCannot = text("This browser cannot vibrate.")
	UnitsTitle    = text("Units")
	GapUnits      = text("Air gap and feeler gauge")
	GapMillis     = "mm"
	GapThous      = text("thousandths of an inch")
	WarmthUnits   = text("Temperature")
	UnitsHint     = text("A reading that is typed with its unit, like 12 thou or 80 F, is always taken in that unit. Records keep what was typed.")
	On            = text("On")
	Off           = text("Off")
	KeysTitle     = text("Keys of a keyboard")
	KeysHint      = text("A whole session can be done on one:")
)

// BeginOne leads from an empty list to what the machine is doing.
var BeginOne = text("Begin a session")

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
var Asleep = text("The phone does not keep its screen on just now, perhaps to save its battery. Tap it now and then.")

// AsleepSeen puts that sentence away.
var AsleepSeen = text("All right")

// Why nothing is read aloud.
var (
	NoVoice           = text("This phone has no voice of its own for the browser. One can often be added in the phone's settings for speech. Voices that need the internet are not used.")
	NoVoiceInLanguage = text("This phone has no voice of its own in this language. One can often be added in the phone's settings for speech.")
)
