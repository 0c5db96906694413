package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"slices"
	"strings"

	"bodkin/process"
	"bodkin/seams/form"
)

// streams are what the program reads from and writes to.
type streams struct {
	in       io.Reader
	out, err io.Writer
}

// Exit codes.
const (
	exitDone     = 0
	exitCouldNot = 1 // the input was right, the work could not be done
	exitInput    = 2 // the input is wrong
)

// run is the whole program: arguments and streams in, exit code out.
func run(ctx context.Context, args []string, s streams) int {
	out := &sticky{to: s.out}
	s.out = out
	root, started := rootCommand(s)
	root.SetArgs(args)
	root.SetIn(s.in)
	root.SetOut(s.out)
	root.SetErr(s.err)
	if err := root.ExecuteContext(ctx); err != nil {
		fmt.Fprintln(s.err, told(err))
		if !*started {
			return exitInput // the command line itself was not understood
		}
		return exitCode(err)
	}
	if out.err != nil {
		fmt.Fprintln(s.err, told(cannot("", "cannot write to standard output: %s", plainCause(out.err))))
		return exitCouldNot
	}
	return exitDone
}

func exitCode(err error) int {
	if _, ok := errors.AsType[form.Faults](err); ok {
		return exitInput
	}
	if _, ok := errors.AsType[form.Fault](err); ok {
		return exitInput
	}
	if m, ok := errors.AsType[mistake](err); ok {
		return m.code
	}
	return exitCouldNot
}

// told is the error for a person. Faults open with file:line:column, so that an
// editor can go there; everything else opens with our name.
func told(err error) string {
	if fs, ok := errors.AsType[form.Faults](err); ok && len(fs) > 0 && fs[0].Place != (form.Place{}) {
		return strings.TrimRight(fs.Error(), "\n")
	}
	if f, ok := errors.AsType[form.Fault](err); ok && f.Place != (form.Place{}) {
		return strings.TrimRight(f.Show(), "\n")
	}
	if c, ok := errors.AsType[*process.CannotError](err); ok {
		return cannotMake(c)
	}
	return "bodkin: " + strings.TrimRight(err.Error(), "\n")
}

// cannotMake gives each reason a line. Where all that could be done is ruled
// out, what would help is not among the reasons.
func cannotMake(c *process.CannotError) string {
	lines := append([]string{"bodkin: cannot make the " + c.About}, c.Why...)
	if slices.ContainsFunc(c.Why, func(w string) bool { return strings.Contains(w, "ruled out") }) {
		lines = append(lines, "another cloth, or another machine in the workroom, may allow it")
	}
	return strings.Join(lines, "\n  ")
}

// sticky remembers the first error of a writer, so that a full disk behind
// standard output is not taken for success.
type sticky struct {
	to  io.Writer
	err error
}

func (s *sticky) Write(p []byte) (int, error) {
	if s.err != nil {
		return 0, s.err
	}
	n, err := s.to.Write(p)
	s.err = err
	return n, err
}
