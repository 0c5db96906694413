package main

import (
	"errors"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
)

// file is a file to be written.
type file struct {
	name string
	data []byte
}

// ready reports early why an output could not be written, before any time is
// spent on its content.
func ready(output string) error {
	if toStandardOutput(output) {
		return nil
	}
	_, err := target(output)
	return err
}

// target is where a file's bytes go, through links: a place that is free, or an
// ordinary file that may be written to.
func target(name string) (string, error) {
	folder := filepath.Dir(name)
	if info, err := os.Stat(folder); errors.Is(err, fs.ErrNotExist) {
		return "", cannot("make the folder first, or name another", "cannot write %s: there is no folder %s", name, folder)
	} else if err != nil {
		return "", unwritable(name, err)
	} else if !info.IsDir() {
		return "", cannot("name another", "cannot write %s: %s is not a folder", name, folder)
	}
	info, err := os.Stat(name)
	if errors.Is(err, fs.ErrNotExist) {
		return name, nil
	}
	if err != nil {
		return "", unwritable(name, err)
	}
	if info.IsDir() {
		return "", cannot("name a file in it", "cannot write %s: it is a folder", name)
	}
	if !info.Mode().IsRegular() {
		return "", cannot("name another", "cannot write %s: it is not an ordinary file", name)
	}
	// Renaming would pass over a write protection of the file itself.
	f, err := os.OpenFile(name, os.O_WRONLY, 0)
	if err != nil {
		return "", unwritable(name, err)
	}
	if err := f.Close(); err != nil {
		return "", unwritable(name, err)
	}
	return filepath.EvalSymlinks(name)
}

func unwritable(name string, err error) error {
	return cannot("", "cannot write %s: %s", name, plainCause(err))
}

// writeFiles writes all files or none. Each goes to a new file beside its target
// first, and only when all are there are they renamed into place; should that
// fail half-way, what was replaced is put back. The folder of the first must be
// there; folders for the others are made.
func writeFiles(files []file) (err error) {
	var b batch
	defer func() { b.end(err) }()
	for i, f := range files {
		if i > 0 {
			if err := b.folder(filepath.Dir(f.name)); err != nil {
				return unwritable(f.name, err)
			}
		}
		if err := b.add(f, len(files) > 1); err != nil {
			return err
		}
	}
	for i := range b.files {
		if err := b.files[i].place(); err != nil {
			return unwritable(files[i].name, err)
		}
	}
	return nil
}

// batch is files on their way to the disk.
type batch struct {
	files   []pending
	folders []string // made for this batch
}

// pending is a file that stands beside its target.
type pending struct {
	target, fresh string
	before        string // copy of what stands at the target; empty where nothing is kept
	mode          fs.FileMode
	placed        bool
}

func (b *batch) folder(name string) error {
	if _, err := os.Stat(name); !errors.Is(err, fs.ErrNotExist) {
		return err
	}
	if err := os.Mkdir(name, 0o777); err != nil {
		return err
	}
	b.folders = append(b.folders, name)
	return nil
}

// add writes a file beside its target, and a copy of what it will replace where
// that may have to be put back.
func (b *batch) add(f file, keep bool) error {
	to, err := target(f.name)
	if err != nil {
		return err
	}
	b.files = append(b.files, pending{target: to})
	p := &b.files[len(b.files)-1]
	info, err := os.Stat(to)
	exists := err == nil
	if exists {
		p.mode = info.Mode().Perm()
	}
	if exists && keep {
		data, err := os.ReadFile(to)
		if err != nil {
			return unwritable(f.name, err)
		}
		if p.before, err = beside(to, data, p.mode); err != nil {
			return unwritable(f.name, err)
		}
	}
	if p.fresh, err = beside(to, f.data, p.mode); err != nil {
		return unwritable(f.name, err)
	}
	return nil
}

// beside writes bytes to a new hidden file in the folder of another. It returns
// the new file's name as soon as there is one to be removed.
func beside(name string, data []byte, mode fs.FileMode) (string, error) {
	fresh := filepath.Join(filepath.Dir(name), fmt.Sprintf(".bodkin-%016x", rand.Uint64()))
	f, err := os.OpenFile(fresh, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return "", err
	}
	_, err = f.Write(data)
	if mode != 0 && err == nil {
		err = f.Chmod(mode)
	}
	if closed := f.Close(); err == nil {
		err = closed
	}
	return fresh, err
}

func (p *pending) place() error {
	err := os.Rename(p.fresh, p.target)
	p.placed = err == nil
	return err
}

// end takes away what is no longer needed; after an error it leaves everything
// as it was found.
func (b *batch) end(err error) {
	for _, p := range b.files {
		switch {
		case err != nil && p.placed && p.before != "":
			_ = os.Rename(p.before, p.target)
		case err != nil && p.placed:
			_ = os.Remove(p.target)
		}
		for _, name := range []string{p.fresh, p.before} {
			if name != "" {
				_ = os.Remove(name)
			}
		}
	}
	for _, name := range b.folders {
		if err != nil {
			_ = os.Remove(name)
		}
	}
}
