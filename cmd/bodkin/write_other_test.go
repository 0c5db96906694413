//go:build !linux

package main

import (
	"os"
	"testing"
)

// asOrdinaryUser skips the test where root runs it, since root may write
// anywhere.
func asOrdinaryUser(t *testing.T) {
	t.Helper()
	if os.Geteuid() <= 0 {
		t.Skip("this user may write anywhere, or files are not protected by modes")
	}
}
