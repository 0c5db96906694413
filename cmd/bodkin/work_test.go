package main

import (
	"strings"
	"testing"
	"time"

	"bodkin/process/order"
)

// Progress is told when the search has taken longer than a second, then once a
// second, and never before.
func TestProgress(t *testing.T) {
	clock := time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)
	begun := clock
	var out strings.Builder
	p := progress{to: &out, now: func() time.Time { return clock }, begun: begun}
	var told []time.Duration
	for _, at := range []time.Duration{0, 400, 999, 1000, 1001, 1500, 2001, 2002, 3500, 4400, 4501} {
		clock = begun.Add(at * time.Millisecond)
		before := out.Len()
		p.tell(order.Progress{Cost: 750, Bound: 600})
		if out.Len() > before {
			told = append(told, at)
		}
	}
	want := []time.Duration{1001, 2002, 3500, 4501}
	if len(told) != len(want) {
		t.Fatalf("told at %v ms, want %v", told, want)
	}
	for i := range want {
		if told[i] != want[i] {
			t.Fatalf("told at %v ms, want %v", told, want)
		}
	}
	line, _, _ := strings.Cut(out.String(), "\n")
	if line != "bodkin: looking for the best order; the best so far has 12.5 minutes of change, and none has less than 10.0" {
		t.Errorf("it says %q", line)
	}
}
