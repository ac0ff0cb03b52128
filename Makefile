# make run     builds everything and serves the app on this machine
# make test    runs all tests; gets a browser and node when it is allowed to
# make bench   runs the benchmarks
# make site    builds the site into dist/, for any static host
#
# PREFIX=/sub/ builds for a path below the host's root; ADDR sets the address.

PREFIX ?= /
ADDR   ?= localhost:8080

wasm   := GOOS=js GOARCH=wasm
native := GOOS= GOARCH=
# The runner of the toolchain refuses a large environment, so it gets a small one.
node   := env -i 'PATH=$$PATH' 'HOME=$$HOME' '$$(go env GOROOT)/lib/wasm/go_js_wasm_exec'

.PHONY: run test bench site clean

run: site
	build/coilbook serve -addr "$(ADDR)" -dir dist -prefix "$(PREFIX)"

site:
	mkdir -p build
	$(wasm) go build -trimpath -buildvcs=false -ldflags="-s -w" -o build/app.wasm ./app
	$(native) go build -trimpath -buildvcs=false -o build/coilbook ./app
	cat "$$(go env GOROOT)/lib/wasm/wasm_exec.js" > build/wasm_exec.js
	rm -rf dist
	build/coilbook site -wasm build/app.wasm -exec build/wasm_exec.js -out dist -prefix "$(PREFIX)"

test:
	.ci/need browser
	.ci/need firefox || test "$$CI" != true
	.ci/need webkit || test "$$CI" != true
	.ci/need node
	CHROME="$$(.ci/find-browser)" go test -timeout 15m ./...
	$(wasm) go test -timeout 15m -exec "$(node)" ./engine/...

bench:
	go test -timeout 90m -run '^$$' -bench . -benchmem ./...

clean:
	rm -rf build dist
