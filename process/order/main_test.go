package order_test

import (
	"flag"
	"os"
	"testing"
)

// TestMain keeps rapid from leaving files of failures in the tree; it prints a
// seed that brings one back.
func TestMain(m *testing.M) {
	if err := flag.Set("rapid.nofailfile", "true"); err != nil {
		panic(err)
	}
	os.Exit(m.Run())
}
