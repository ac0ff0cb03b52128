package tongue

import "syscall/js"

// spanish is what the page has fetched where its reader wants it: the catalogue is a
// file of its own, which nobody else loads.
var spanish = handedOver(js.Global().Get("coilbookCatalogue"))

func handedOver(v js.Value) string {
	if v.Type() != js.TypeString {
		return ""
	}
	return v.String()
}

// Catalogues are none here: they are files of the site that the program runs on.
func Catalogues() map[string]string { return nil }
