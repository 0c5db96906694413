// Package sheettest is what the tests of the sheets have in common: the plans that are
// kept, plans of garments as they are started with, tools that may be missing.
package sheettest

import (
	"bytes"
	"encoding/json"
	"os"
	"os/exec"
	"testing"

	"bodkin/process"
	"bodkin/process/order"
	"bodkin/seams"
	"bodkin/seams/length"
	"bodkin/templates"
)

// Kept is a plan that is kept as JSON. Unknown fields fail, so that a plan of an
// older form is not taken for a whole one.
func Kept(t testing.TB, file string) *process.Plan {
	t.Helper()
	data, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	var p process.Plan
	if err := d.Decode(&p); err != nil {
		t.Fatal(err)
	}
	return &p
}

// Started is the plan of a garment as a new job for it stands, in the first order
// that is found.
func Started(t testing.TB, garment string) *process.Plan {
	t.Helper()
	shelf, err := seams.Load()
	if err != nil {
		t.Fatal(err)
	}
	g, err := templates.Load(garment)
	if err != nil {
		t.Fatal(err)
	}
	job, err := process.ParseJob("job.yaml", process.StartJob(g, shelf, length.Centimetres))
	if err != nil {
		t.Fatal(err)
	}
	p, err := process.Work(t.Context(), process.Input{Job: job, Garment: g, Workroom: process.DefaultWorkroom(), Shelf: shelf}, order.Options{Nodes: order.NoSearch})
	if err != nil {
		t.Fatal(err)
	}
	return p
}

// Program is a tool's path. On a machine of one's own a missing tool skips the test;
// under CI it fails it.
func Program(t testing.TB, name string) string {
	t.Helper()
	path, err := exec.LookPath(name)
	if err == nil {
		return path
	}
	if os.Getenv("CI") == "true" {
		t.Fatalf("%s is needed under CI: %v", name, err)
	}
	t.Skipf("%s is not installed", name)
	return ""
}
