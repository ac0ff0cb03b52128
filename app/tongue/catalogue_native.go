//go:build !js

package tongue

import _ "embed"

//go:embed es.po
var spanish string

// Catalogues are those of the languages besides the source's, by the names of their
// files.
func Catalogues() map[string]string { return map[string]string{"es.po": spanish} }
