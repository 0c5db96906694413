package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"syscall"
	"testing"
)

// asOrdinaryUser makes the file system treat this test as an ordinary user's
// for the rest of it, where root runs it, since root may write anywhere. What
// stands in the working folder becomes that user's.
func asOrdinaryUser(t *testing.T) {
	t.Helper()
	if os.Geteuid() != 0 {
		return
	}
	const nobody = 65534
	dir, err := os.Getwd()
	if err != nil {
		t.Fatal(err)
	}
	if err := os.Chmod(filepath.Dir(dir), 0o755); err != nil {
		t.Fatal(err)
	}
	err = filepath.WalkDir(dir, func(name string, _ fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		return os.Chown(name, nobody, nobody)
	})
	if err != nil {
		t.Fatal(err)
	}
	// The user belongs to a thread, and the test to a thread as long as it is
	// locked to it.
	runtime.LockOSThread()
	if err := syscall.Setfsuid(nobody); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() {
		if err := syscall.Setfsuid(0); err != nil {
			t.Fatal(err)
		}
		runtime.UnlockOSThread()
	})
}
