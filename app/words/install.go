package words

// Words of the way onto the home screen.
var (
	InstallTitle  = text("Keep Coilbook on the home screen")
	InstallWhy    = text("Your first result is saved. From the home screen Coilbook opens without signal, and phones clear its records less easily.")
	InstallHint   = text("It opens from there without signal, like any app.")
	InstallNow    = text("Put it there")
	InstallLater  = text("Do not show this again")
	InstallAgain  = text("The way stays under “This phone”.")
	InstallDone   = text("Coilbook runs from the home screen.")
	InstallTaken  = text("It is being put there.")
	InstallNoWay  = text("If this browser can, its menu has an entry like “Add to home screen” or “Install”.")
	ShareSignName = text("the sign for sharing: a box with an arrow up")
)

// InstallByShare is the way on an iPhone or iPad, step by step. The sign for
// sharing stands beside the first. From memory: the names are the phone's.
func InstallByShare() []string {
	return []string{
		say("Tap the sign for sharing, a box with an arrow up, in Safari's bar."),
		say("Move down the list and tap “Add to Home Screen”."),
		say("Tap “Add”."),
	}
}
