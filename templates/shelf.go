package templates

import (
	"embed"
	"fmt"
	"path"
	"strings"
)

// garments are the garments that come with bodkin, one a file, named as the
// garment is.
//
//go:embed garments/*.yaml
var garments embed.FS

//go:embed blank.yaml
var blank string

// Blank is a small garment with comments, to be changed to one of the maker's own.
func Blank() []byte { return []byte(blank) }

// Names returns the names of the garments on the shelf, sorted.
func Names() []string { return namesIn(garments, "garments") }

// namesIn are the names of the YAML files of a directory that is part of the
// program, sorted.
func namesIn(shelf embed.FS, dir string) []string {
	entries, err := shelf.ReadDir(dir)
	if err != nil {
		panic(err) // the directory is part of the program
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".yaml")
	}
	return names
}

// Load reads a garment of the shelf.
func Load(name string) (*Garment, error) {
	data, file := Text(name)
	if data == nil {
		return nil, fmt.Errorf("no garment %q on the shelf; the garments are %s", name, strings.Join(Names(), ", "))
	}
	return Parse(file, data)
}

// Text returns a garment's file as it is written, and the file's name; nil where
// there is none.
func Text(name string) (data []byte, file string) {
	file = path.Join("garments", name+".yaml")
	data, err := garments.ReadFile(file)
	if err != nil {
		return nil, file
	}
	return data, file
}
