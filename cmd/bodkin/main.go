// Command bodkin plans the making of a garment and prints its step sheet.
//
// It reads a job, a workroom and the shelf, hands them to the planner, and
// writes the plan as Markdown, PDF or JSON. The one idea: this package knows
// files, flags and terminals, and no sewing. Start at run in run.go; each
// command has a file of its name, and every word on what is wrong with the
// command line is in mistake.go.
package main

import (
	"context"
	"os"
	"os/signal"
	"runtime/debug"
	"syscall"
)

func main() {
	thriftless()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	context.AfterFunc(ctx, stop) // a second interrupt ends the program at once
	os.Exit(run(ctx, os.Args[1:], streams{in: os.Stdin, out: os.Stdout, err: os.Stderr}))
}

// thriftless collects garbage seldom: a plan needs a few dozen megabytes for a
// quarter of a second, and a quarter of that time went into collecting them. The
// limit keeps a long search, which may hold a gigabyte, to the usual thrift.
func thriftless() {
	debug.SetGCPercent(400)
	debug.SetMemoryLimit(2 << 30)
}
