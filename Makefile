# make run     builds everything and serves the app on this machine
# make test    runs all tests; gets a browser and node when it is allowed to
# make bench   runs the benchmarks
# make site    builds the site into dist/, for any static host, within its budget
# make size    lists what the program for the browser is made of
# make pictures takes the pictures of the README anew
# make audit   measures the start of the site
#
# PREFIX=/sub/ builds for a path below the host's root; ADDR sets the address.

PREFIX ?= /
ADDR   ?= localhost:8080
COMPRESS ?= best

wasm   := GOOS=js GOARCH=wasm
native := GOOS= GOARCH=
# The runner of the toolchain refuses a large environment, so it gets a small one.
node   := env -i 'PATH=$$PATH' 'HOME=$$HOME' '$$(go env GOROOT)/lib/wasm/go_js_wasm_exec'

.PHONY: run test bench site program size pictures audit clean build/coilbook

# The program for the browser is built with some of the standard library left
# out (see slim); "make run" compresses quickly, "make site" as far as it goes.
run: COMPRESS = quick
run: site
	build/coilbook serve -addr "$(ADDR)" -dir dist -prefix "$(PREFIX)"

site: program
	rm -rf dist
	build/coilbook site -wasm build/app.wasm -exec build/wasm_exec.js -out dist -prefix "$(PREFIX)" -compress $(COMPRESS) -cache build/compressed

program: build/coilbook
	$(wasm) go build $$(build/coilbook slim -goroot "$$(go env GOROOT)" -out build/slim) -ldflags=-s -o build/linked.wasm ./app
	build/coilbook slim -wasm build/linked.wasm -out build/app.wasm
	cat "$$(go env GOROOT)/lib/wasm/wasm_exec.js" > build/wasm_exec.js

build/coilbook:
	mkdir -p build
	$(native) go build -trimpath -buildvcs=false -o build/coilbook ./app

# Walks the gallery in a browser, in both looks, into docs/pictures.
pictures:
	.ci/need browser
	CHROME="$$(.ci/find-browser)" go test -timeout 15m ./app -run TestPictures -pictures -count 1

# Measures the start in a browser; needs npm.
audit: site
	.ci/need browser
	.ci/need node
	.ci/audit

# Prints what the program is made of, by package.
size: build/coilbook
	$(wasm) go build $$(build/coilbook slim -goroot "$$(go env GOROOT)" -out build/slim) -o build/named.wasm ./app
	$(wasm) go list -deps ./app > build/packages
	build/coilbook size -wasm build/named.wasm -packages build/packages

test:
	.ci/need browser
	.ci/need firefox || test "$$CI" != true
	.ci/need webkit || test "$$CI" != true
	.ci/need node
	.ci/need paper || test "$$CI" != true
	CHROME="$$(.ci/find-browser)" go test -timeout 40m ./...
	$(wasm) go test -timeout 15m -exec "$(node)" ./engine/...

bench:
	go test -timeout 90m -run '^$$' -bench . -benchmem ./...

clean:
	rm -rf build dist
