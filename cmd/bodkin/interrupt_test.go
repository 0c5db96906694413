//go:build unix

package main

import (
	"bytes"
	"os"
	"os/exec"
	"strings"
	"testing"
	"time"
)

// The program itself, interrupted while it waits for its job, says so and ends.
func TestInterruptSignal(t *testing.T) {
	alone(t)
	cmd := exec.CommandContext(t.Context(), "bodkin", "plan", "-", "-o", "sheet.pdf")
	var errs bytes.Buffer
	cmd.Stderr = &errs
	in, err := cmd.StdinPipe()
	if err != nil {
		t.Fatal(err)
	}
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	// More than a pipe holds: once it is written, the program is reading.
	if _, err := in.Write(bytes.Repeat([]byte("# a comment\n"), 20_000)); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Process.Signal(os.Interrupt); err != nil {
		t.Fatal(err)
	}
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	select {
	case <-ended:
	case <-time.After(30 * time.Second):
		t.Fatal("it goes on")
	}
	if code := cmd.ProcessState.ExitCode(); code != exitCouldNot || strings.TrimSpace(errs.String()) != "bodkin: interrupted while reading standard input" {
		t.Errorf("exit code %d: %s", code, errs.String())
	}
	if left := listing(t); len(left) != 1 {
		t.Errorf("left are %v", left)
	}
}
