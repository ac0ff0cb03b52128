//go:build !js

package main

import (
	"maps"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"coilbook/slim"
)

// allowed are the functions that the linker may keep of packages that only stand
// in: setting up, what gives an error, and what works. All others panic, so one
// that is kept is one that the program may call.
var allowed = []string{
	"init", "NewCipher", "NewGCM", // an error
	"MustCompile", "Regexp.MatchString", "browser.Read", "ParseAddr", "Addr.Is4", // crypto and routes that work
	"New", "Sum", "step", "mix", "digest.Write", "digest.Sum", "digest.Reset", "digest.Size", "digest.BlockSize",
	"Setting.Value", "Setting.IncNonDefault",
}

func TestNothingReachesWhatWasLeftOut(t *testing.T) {
	root, err := exec.Command("go", "env", "GOROOT").Output()
	require.NoError(t, err)
	flags, err := slim.Prepare(strings.TrimSpace(string(root)), t.TempDir())
	require.NoError(t, err)
	program, err := compile("build", append(flags, ".")...)
	require.NoError(t, err)
	functions, _, err := functionsOf(program)
	require.NoError(t, err)
	groups := byPackage(functions, append(slices.Clone(slim.Replaced), "coilbook/app/screen"))
	require.NotEmpty(t, groups["coilbook/app/screen"], "the program's own functions are seen")
	for _, name := range slices.Sorted(maps.Keys(groups)) {
		if !slices.Contains(slim.Replaced, name) {
			continue
		}
		for _, f := range groups[name] {
			_, own, _ := strings.Cut(f.name, mangled.ReplaceAllString(name, "_")+".")
			own = strings.NewReplacer("__", "", "_", "").Replace(own)
			if !slices.Contains(allowed, own) || own == "New" && name == "crypto/md5" {
				t.Errorf("the program may call %s of %s, which panics", own, name)
			}
		}
	}
}
