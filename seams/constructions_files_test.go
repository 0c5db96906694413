package seams_test

import (
	"os"
	"path/filepath"
	"testing"
)

// constructionFiles are the texts of the constructions' files by name.
func constructionFiles(t testing.TB) map[string]string {
	t.Helper()
	names, err := filepath.Glob(filepath.Join("shelf", "constructions", "*.yaml"))
	if err != nil || len(names) == 0 {
		t.Fatalf("no files: %v", err)
	}
	texts := map[string]string{}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		texts[filepath.Base(name)] = string(data)
	}
	return texts
}
