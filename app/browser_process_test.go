//go:build !js

package main

import (
	"bytes"
	"fmt"
	"io"
	"os"
	"os/exec"
	"regexp"
	"sync"
	"syscall"
	"time"
)

// process is a program that a test runs beside itself, with all that the
// program starts.
type process struct {
	name  string
	cmd   *exec.Cmd
	leash io.Closer // closing it ends the program

	mu     sync.Mutex
	output bytes.Buffer
}

// keeper runs a program in a process group of its own and ends the group when
// its standard input ends: on request, or because the test is gone, however it
// went.
const keeper = `"$@" </dev/null & read -r _; trap '' TERM; kill -TERM 0; sleep 0.3; kill -KILL 0`

func startProcess(env []string, program string, args ...string) (*process, error) {
	p := &process{name: program}
	p.cmd = exec.Command("sh", append([]string{"-c", keeper, "sh", program}, args...)...)
	p.cmd.Env = append(os.Environ(), env...)
	p.cmd.Stdout, p.cmd.Stderr = p, p
	p.cmd.SysProcAttr = &syscall.SysProcAttr{Setpgid: true}
	p.cmd.WaitDelay = 5 * time.Second
	leash, err := p.cmd.StdinPipe()
	if err != nil {
		return nil, err
	}
	p.leash = leash
	return p, p.cmd.Start()
}

// Write takes what the program prints.
func (p *process) Write(text []byte) (int, error) {
	p.mu.Lock()
	defer p.mu.Unlock()
	return p.output.Write(text)
}

// waitOutput waits until the program prints something of that form and gives
// its first group.
func (p *process) waitOutput(form *regexp.Regexp) (string, error) {
	for deadline := time.Now().Add(patience); time.Now().Before(deadline); time.Sleep(20 * time.Millisecond) {
		p.mu.Lock()
		found := form.FindSubmatch(p.output.Bytes())
		p.mu.Unlock()
		if found != nil {
			return string(found[1]), nil
		}
	}
	p.mu.Lock()
	defer p.mu.Unlock()
	return "", fmt.Errorf("%s did not print %s in %s, but\n%s", p.name, form, patience, p.output.String())
}

func (p *process) stop() {
	_ = p.leash.Close()
	_ = p.cmd.Wait()
}

// scratch is a new directory for programs that may still write to it while they
// are ended, and the function that removes it.
func scratch() (dir string, remove func(), err error) {
	dir, err = os.MkdirTemp("", "coilbook-browser-")
	return dir, func() {
		for range 20 {
			if os.RemoveAll(dir) == nil {
				return
			}
			time.Sleep(100 * time.Millisecond)
		}
	}, err
}
