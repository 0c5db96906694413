package main

import (
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"
	"github.com/spf13/pflag"
)

// A flag wins over a variable, a variable over what is usual; an empty variable
// says nothing; a variable that names no setting is passed over.
func TestSettings(t *testing.T) {
	usual := settings{paper: "a4", within: 10 * time.Second, reader: "maker", detail: "full", figures: "files"}
	with := func(change func(*settings)) settings { s := usual; change(&s); return s }
	list := strings.Join([]string{"my own.yaml", "b"}, string(filepath.ListSeparator))
	for _, tt := range []struct {
		name  string
		flags string
		env   map[string]string
		want  settings
	}{
		{"nothing said", "", nil, usual},
		{"flags", "--units=in --paper=letter --type-size=12 --within=2m --for=bench --detail=brief --figures=none --workroom=w.yaml --shelf=a,b --shelf=c", nil,
			settings{workroom: "w.yaml", shelf: []string{"a,b", "c"}, units: "in", paper: "letter", typeSize: 12, within: 2 * time.Minute, reader: "bench", detail: "brief", figures: "none"}},
		{"variables", "", map[string]string{"BODKIN_UNITS": "in", "BODKIN_PAPER": "A5", "BODKIN_TYPE_SIZE": "9.5", "BODKIN_WITHIN": "0s", "BODKIN_WORKROOM": "w.yaml", "BODKIN_SHELF": list,
			"BODKIN_FOR": "class", "BODKIN_FIGURES": "inline"},
			settings{workroom: "w.yaml", shelf: []string{"my own.yaml", "b"}, units: "in", paper: "a5", typeSize: 9.5, reader: "class", detail: "full", figures: "inline"}},
		{"a flag over a variable", "--units=cm --shelf=c", map[string]string{"BODKIN_UNITS": "in", "BODKIN_SHELF": list, "BODKIN_PAPER": "letter"},
			with(func(s *settings) { s.units, s.shelf, s.paper = "cm", []string{"c"}, "letter" })},
		{"a flag as usual over a variable", "--within=10s --paper=a4", map[string]string{"BODKIN_WITHIN": "1s", "BODKIN_PAPER": "letter"}, usual},
		{"empty variables", "", map[string]string{"BODKIN_UNITS": "", "BODKIN_SHELF": "", "BODKIN_WITHIN": ""}, usual},
		{"unknown variables", "", map[string]string{"BODKIN_TREADLE": "yes", "BODKIN_UNIT": "ell", "BODKIN": "x"}, usual},
	} {
		t.Run(tt.name, func(t *testing.T) {
			alone(t)
			for name, value := range tt.env {
				t.Setenv(name, value)
			}
			f := pflag.NewFlagSet("test", pflag.ContinueOnError)
			addSettings(f, settingNames()...)
			if err := f.Parse(strings.Fields(tt.flags)); err != nil {
				t.Fatal(err)
			}
			got, err := loadSettings(f)
			if err != nil {
				t.Fatal(err)
			}
			if d := cmp.Diff(tt.want, got, cmp.AllowUnexported(settings{}), cmpopts.EquateEmpty()); d != "" {
				t.Errorf("(-want +got):\n%s", d)
			}
		})
	}
}

// A setting that means nothing to a command is not looked at.
func TestSettingsOfAnotherCommand(t *testing.T) {
	alone(t)
	t.Setenv("BODKIN_PAPER", "papyrus")
	f := pflag.NewFlagSet("test", pflag.ContinueOnError)
	addSettings(f, "units")
	if got, err := loadSettings(f); err != nil || got.paper != "" {
		t.Errorf("%+v, %v", got, err)
	}
}

// Every setting has a flag with a word about it that fits the page.
func TestHelpFitsThePage(t *testing.T) {
	alone(t)
	for _, command := range []string{"", "plan", "check", "start", "list", "show", "why", "completion"} {
		for line := range strings.Lines(must(t, strings.Fields(command+" --help")...)) {
			if n := len([]rune(strings.TrimSuffix(line, "\n"))); n > columns {
				t.Errorf("%s: %d columns in %q", command, n, line)
			}
		}
	}
	help := must(t, "plan", "--help")
	for _, n := range settingNames() {
		if !strings.Contains(help, "--"+n+" ") {
			t.Errorf("plan has no --%s", n)
		}
	}
}
