package main

import (
	"context"
	"errors"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"bodkin/seams"
	"bodkin/seams/form"
	"bodkin/sheets"
)

// largest is the most that is read of a file: a job or garment is a few
// kilobytes, and what is larger is some other file.
const largest = 1 << 20

// standardInput is the name of standard input in messages.
const standardInput = "standard input"

// readFile reads a file of the maker's whole.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if errors.Is(err, fs.ErrNotExist) {
		return nil, wrong("check the name and the folder", "no file %s", name)
	}
	if err != nil {
		return nil, unreadable(name, err)
	}
	defer f.Close()
	if info, err := f.Stat(); err == nil && info.IsDir() {
		return nil, wrong("name a file in it", "%s is a folder", name)
	}
	data, err := readUpTo(f)
	if err != nil {
		return nil, unreadable(name, err)
	}
	return checkSize(name, data)
}

// readInput reads standard input whole, or until the context ends, since a
// terminal may never come to an end.
func readInput(ctx context.Context, in io.Reader) ([]byte, error) {
	type result struct {
		data []byte
		err  error
	}
	done := make(chan result, 1)
	go func() {
		data, err := readUpTo(in)
		done <- result{data, err}
	}()
	select {
	case r := <-done:
		if r.err != nil {
			return nil, unreadable(standardInput, r.err)
		}
		return checkSize(standardInput, r.data)
	case <-ctx.Done():
		return nil, cannot("", "interrupted while reading standard input")
	}
}

func readUpTo(r io.Reader) ([]byte, error) { return io.ReadAll(io.LimitReader(r, largest+1)) }

func unreadable(name string, err error) error {
	return wrong("", "cannot read %s: %s", name, plainCause(err))
}

func checkSize(name string, data []byte) ([]byte, error) {
	if len(data) > largest {
		return nil, form.Faults{form.FaultAt(form.Place{File: name, Line: 1, Column: 1},
			"the file is larger than 1 MiB, which no job, workroom, garment or shelf file is", "", "name another file")}
	}
	return data, nil
}

// findWorkroom is the workroom file in the usual places, or empty. A file that
// is there but must not be read is found too, so that reading tells of it.
func findWorkroom() string {
	places := []string{"workroom.yaml"}
	if dir, err := os.UserConfigDir(); err == nil {
		places = append(places, filepath.Join(dir, "bodkin", "workroom.yaml"))
	}
	for _, name := range places {
		if _, err := os.Stat(name); err == nil || errors.Is(err, fs.ErrPermission) {
			return name
		}
	}
	return ""
}

// ownFiles reads the maker's own shelf files; a folder stands for the YAML files
// in it, by name.
func ownFiles(names []string) ([]seams.File, error) {
	var own []seams.File
	for _, name := range names {
		files := []string{name}
		if info, err := os.Stat(name); err == nil && info.IsDir() {
			if files, err = yamlIn(name); err != nil {
				return nil, err
			}
		}
		for _, f := range files {
			data, err := readFile(f)
			if err != nil {
				return nil, err
			}
			own = append(own, seams.File{Name: f, Data: data})
		}
	}
	return own, nil
}

// ownWording is the wording with the maker's own sentences, of a file or of the
// YAML files in a folder, by name; nil where none is named.
func ownWording(name string) (*sheets.Wording, error) {
	if name == "" {
		return nil, nil
	}
	files, err := ownFiles([]string{name})
	if err != nil {
		return nil, err
	}
	w := sheets.English()
	for _, f := range files {
		if w, err = w.With(f.Name, f.Data); err != nil {
			return nil, err
		}
	}
	return w, nil
}

func yamlIn(folder string) ([]string, error) {
	found, err := os.ReadDir(folder)
	if err != nil {
		return nil, unreadable(folder, err)
	}
	var files []string
	for _, f := range found {
		if !f.IsDir() && isYAML(f.Name()) {
			files = append(files, filepath.Join(folder, f.Name()))
		}
	}
	if len(files) == 0 {
		return nil, wrong("name the folder that holds your shelf", "no file in the folder %s ends in .yaml", folder)
	}
	return files, nil
}

func isYAML(name string) bool {
	return slices.Contains([]string{".yaml", ".yml"}, strings.ToLower(filepath.Ext(name)))
}
