package main

import (
	"os"
	"regexp"
	"strings"
	"testing"
)

// The README's garment from nothing has twenty lines at most and can be sewn.
func TestGarmentOfTheReadme(t *testing.T) {
	data, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	block := regexp.MustCompile("(?s)```yaml\n(garment: .*?)```").FindSubmatch(data)
	if block == nil {
		t.Fatal("the README has no garment")
	}
	text := string(block[1])
	if n := strings.Count(text, "\n"); n > 20 {
		t.Errorf("%d lines", n)
	}
	alone(t)
	write(t, map[string]string{"skirt.yaml": text, "job.yaml": "make: ./skirt.yaml\ncloth: {main: {is: cotton-poplin, colour: red}}\n"})
	if got := must(t, "check", "skirt.yaml"); !strings.Contains(got, "front.side 60 cm, back.side 60 cm") {
		t.Errorf("check says %s", got)
	}
	if got := must(t, "plan", "job.yaml"); !strings.HasPrefix(got, "# Plain skirt\n") {
		t.Errorf("the sheet begins %.60s", got)
	}
}
