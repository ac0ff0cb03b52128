package words

// Words of the way onto the home screen.
const (
	InstallTitle  = "Keep Coilbook on the home screen"
	InstallWhy    = "Your first result is saved. From the home screen Coilbook opens without signal, and phones clear its records less easily."
	InstallHint   = "It opens from there without signal, like any app."
	InstallNow    = "Put it there"
	InstallLater  = "Do not show this again"
	InstallAgain  = "The way stays under “This phone”."
	InstallDone   = "Coilbook runs from the home screen."
	InstallTaken  = "It is being put there."
	InstallNoWay  = "If this browser can, its menu has an entry like “Add to home screen” or “Install”."
	ShareSignName = "the sign for sharing: a box with an arrow up"
)

// InstallByShare is the way on an iPhone or iPad, step by step. The sign for
// sharing stands beside the first. From memory: the names are the phone's.
func InstallByShare() []string {
	return []string{
		"Tap the sign for sharing, a box with an arrow up, in Safari's bar.",
		"Move down the list and tap “Add to Home Screen”.",
		"Tap “Add”.",
	}
}
