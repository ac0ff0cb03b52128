//go:build !js

package device

// Prefix is the path under which the app is hosted, with both slashes.
func Prefix() string { return "/" }

// PersistStorage asks for records that the browser does not clear by itself.
func PersistStorage() {}

// Download hands the user a file.
func Download(name, mime string, data []byte) {}

// OfflineReady calls tell once everything the app needs is kept on the device.
func OfflineReady(tell func()) {}

// UpdateWaiting calls onReady when a new version is installed and waits.
func UpdateWaiting(onReady func()) {}

// TakeOverUpdate puts the waiting version in charge and reloads the page.
func TakeOverUpdate() {}

// OnKey calls handle for every key pressed outside text fields.
func OnKey(handle func(key string) (handled bool)) (release func()) { return func() {} }

// FocusHeading moves the focus to the first heading of the page.
func FocusHeading() {}

// Pause lets the page answer a touch between two long steps.
func Pause() {}

// EndFirstPaint takes away what the page showed before the program.
func EndFirstPaint() {}

// ScrollTop shows the top of the page.
func ScrollTop() {}

// ShowPart brings a part of the page into view and moves the focus to it.
func ShowPart(id string) {}

// GuardLeaving has the browser ask before it closes or reloads the page.
func GuardLeaving(unsafe func() bool) {}

// RenamePlace gives the place that is shown another address: Back comes to that one.
func RenamePlace(path string) {}

// SetTitle names the page.
func SetTitle(title string) {}

// Theme is the look in force.
func Theme() string { return "light" }

// SetTheme changes the look.
func SetTheme(string) {}

// SetLanguage remembers a language and starts the app anew in it.
func SetLanguage(string) {}
