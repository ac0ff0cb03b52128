//go:build !js

package main

import (
	"testing"

	"coilbook/app/tongue/tonguetest"
	"coilbook/app/words"
)

func TestMain(m *testing.M) { tonguetest.Main(m, words.Language(), endCommon) }
