package html_test

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	stdhtml "html"
	"net/http"
	"net/http/httptest"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"
	"time"

	"bodkin/sheets"
	"bodkin/sheets/html"
	"bodkin/sheets/sheettest"
)

// chromium runs a browser without a window and returns what it prints.
func chromium(t *testing.T, args ...string) string {
	t.Helper()
	path := sheettest.Program(t, "chromium")
	ctx, cancel := context.WithTimeout(t.Context(), 4*time.Minute)
	defer cancel()
	args = append([]string{"--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars", "--user-data-dir=" + t.TempDir()}, args...)
	var out, said bytes.Buffer
	cmd := exec.CommandContext(ctx, path, args...)
	cmd.Stdout, cmd.Stderr = &out, &said
	if err := cmd.Run(); err != nil {
		t.Fatalf("chromium: %v\n%s", err, said.String())
	}
	return out.String()
}

// topSheet is the sheet of a real plan, with notes that would act if they could.
func topSheet(t *testing.T, options ...func(*sheets.Options)) []byte {
	t.Helper()
	p := sheettest.Kept(t, "../testdata/shell-top.json")
	p.Notes = "<img src=x onerror=\"document.title='acted'\"> <script>document.title='acted'</script>\n\n" +
		"| " + strings.Repeat("verylongword", 12) + " | b |\n| - | - |\n| " + strings.Repeat("0123456789", 12) + " | x |\n\n" +
		"    " + strings.Repeat("code ", 60) + "\n"
	o := sheets.Options{FiguresAt: "figures/"}
	for _, set := range options {
		set(&o)
	}
	s := sheets.Compose(p, o)
	var out bytes.Buffer
	if err := html.Write(&out, s.Markdown, html.Options{Figures: s.ByAddress()}); err != nil {
		t.Fatal(err)
	}
	return out.Bytes()
}

// widths are those of a small phone, a tablet and a desk.
var widths = []int{360, 768, 1280}

// looker is a page that shows the sheet at every width and writes down what it
// finds: how wide each wants to be, the titles, and whether a box that was
// ticked is still ticked when the sheet is opened again.
const looker = `<!DOCTYPE html><title>look</title><pre id="found"></pre>
%s<script>
const frames = [...document.querySelectorAll("iframe")];
const loaded = (f) => new Promise((done) => f.addEventListener("load", done, { once: true }));
(async () => {
  await Promise.all(frames.map(loaded));
  const found = {};
  for (const f of frames) {
    const doc = f.contentDocument, bar = doc.getElementById("ticks");
    found[f.width] = { wants: doc.documentElement.scrollWidth, has: doc.documentElement.clientWidth, title: doc.title,
      boxes: doc.querySelectorAll("main input").length, bar: !bar.hidden, images: doc.images.length };
  }
  const f = frames[0];
  f.contentDocument.querySelectorAll("main input")[2].click();
  const again = loaded(f);
  f.contentWindow.location.reload();
  await again;
  found.kept = [...f.contentDocument.querySelectorAll("main input")].slice(0, 5).map((b) => b.checked);
  found.said = f.contentDocument.getElementById("done").textContent;
  document.getElementById("found").textContent = JSON.stringify(found);
})();
</script>`

func TestInTheBrowser(t *testing.T) {
	for name, sheet := range map[string][]byte{"top": topSheet(t), "sitting": sittingSheet(t)} {
		t.Run(name, func(t *testing.T) { looksRight(t, sheet) })
	}
}

// looksRight wants a sheet within every width, its boxes kept, and no words acted on.
func looksRight(t *testing.T, sheet []byte) {
	frames := ""
	for _, w := range widths {
		frames += fmt.Sprintf(`<iframe src="/sheet" width="%d" height="700"></iframe>`, w)
	}
	server := serve(map[string]string{"/": fmt.Sprintf(looker, frames), "/sheet": string(sheet)})
	defer server.Close()
	found := foundBy(t, chromium(t, "--virtual-time-budget=20000", "--dump-dom", server.URL))
	for _, w := range widths {
		var at struct {
			Wants, Has, Boxes, Images int
			Title                     string
			Bar                       bool
		}
		if err := json.Unmarshal(found[fmt.Sprint(w)], &at); err != nil {
			t.Fatal(err)
		}
		if at.Wants > at.Has || at.Has == 0 {
			t.Errorf("at %d the sheet is %d wide and has %d: it scrolls sideways", w, at.Wants, at.Has)
		}
		if at.Title == "acted" || at.Images > 0 {
			t.Errorf("at %d words of the notes acted: title %q, %d images", w, at.Title, at.Images)
		}
		if at.Boxes < 50 || !at.Bar {
			t.Errorf("at %d there are %d boxes, and the bar is shown: %t", w, at.Boxes, at.Bar)
		}
	}
	if got := string(found["kept"]); got != "[false,false,true,false,false]" {
		t.Errorf("opened again, the first boxes are %s", got)
	}
	if got := string(found["said"]); !strings.HasPrefix(got, `"1 of `) {
		t.Errorf("opened again, the bar says %s", got)
	}
}

func serve(pages map[string]string) *httptest.Server {
	return httptest.NewServer(http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		body, ok := pages[r.URL.Path]
		if !ok {
			http.NotFound(w, r)
			return
		}
		kind := "text/html; charset=utf-8"
		if strings.HasSuffix(r.URL.Path, ".js") {
			kind = "text/javascript; charset=utf-8"
		}
		w.Header().Set("Content-Type", kind)
		_, _ = w.Write([]byte(body))
	}))
}

var foundIn = regexp.MustCompile(`(?s)<pre id="found">(.*?)</pre>`)

// foundBy is what a looking page wrote down.
func foundBy(t *testing.T, dom string) map[string]json.RawMessage {
	t.Helper()
	m := foundIn.FindStringSubmatch(dom)
	if m == nil || m[1] == "" {
		t.Fatalf("the page wrote nothing down: %.2000s", dom)
	}
	found := map[string]json.RawMessage{}
	if err := json.Unmarshal([]byte(stdhtml.UnescapeString(m[1])), &found); err != nil {
		t.Fatal(err)
	}
	return found
}

// axe-core (Deque, MPL 2.0) tries the rules of WCAG 2 and of good practice. It
// is not part of this project; AXE_CORE names the file axe.min.js of its npm
// package.
func TestAccessibility(t *testing.T) {
	name := os.Getenv("AXE_CORE")
	if name == "" {
		if os.Getenv("CI") == "true" {
			t.Fatal("AXE_CORE must name axe.min.js under CI")
		}
		t.Skip("AXE_CORE does not name axe.min.js")
	}
	axe, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	// The page's policy lets no other script in, which is right; the copy that
	// is tried has none.
	policy := regexp.MustCompile(`<meta http-equiv="Content-Security-Policy"[^>]*>`)
	open := policy.ReplaceAllString(string(topSheet(t)), "")
	runner := `<script src="/axe.js"></script><script>axe.run(document, matchMedia("(prefers-color-scheme: dark)").matches ? { runOnly: ["color-contrast"] } : {}).then((r) => {
  parent.postMessage({ width: innerWidth, checked: r.passes.length, violations: r.violations.map((v) => v.id + ": " + v.help + " " + v.nodes.slice(0, 3).map((n) => n.html.slice(0, 160)).join(" // ")) }, "*");
});</script></body>`
	outer := `<!DOCTYPE html><title>look</title><pre id="found"></pre><iframe src="/sheet" width="360" height="700"></iframe><iframe src="/sheet" width="1280" height="700"></iframe><script>
const found = {};
addEventListener("message", (e) => {
  found[e.data.width] = e.data;
  if (Object.keys(found).length === 2) document.getElementById("found").textContent = JSON.stringify(found);
});
</script>`
	server := serve(map[string]string{"/": outer, "/sheet": strings.Replace(open, "</body>", runner, 1), "/axe.js": string(axe)})
	defer server.Close()
	// Dark differs from light in its colours only.
	for _, look := range []struct {
		name, setting string
		least         int
	}{{"light", "preferredColorScheme=1", 20}, {"dark", "preferredColorScheme=0", 1}} {
		t.Run(look.name, func(t *testing.T) {
			found := foundBy(t, chromium(t, "--virtual-time-budget=120000", "--blink-settings="+look.setting, "--dump-dom", server.URL))
			for _, w := range []string{"360", "1280"} {
				var at struct {
					Checked    int
					Violations []string
				}
				if err := json.Unmarshal(found[w], &at); err != nil {
					t.Fatal(err)
				}
				if at.Checked < look.least {
					t.Errorf("at %s only %d rules had something to check", w, at.Checked)
				}
				for _, v := range at.Violations {
					t.Errorf("at %s: %s", w, v)
				}
			}
		})
	}
}

// Printed by the browser, the sheet has all its steps in order and none of the
// page's own furniture.
func TestPrinted(t *testing.T) {
	sheet := topSheet(t)
	path := sheettest.Program(t, "pdftotext")
	server := serve(map[string]string{"/": string(sheet)})
	defer server.Close()
	file := filepath.Join(t.TempDir(), "sheet.pdf")
	chromium(t, "--no-pdf-header-footer", "--print-to-pdf="+file, server.URL)
	text, err := exec.CommandContext(t.Context(), path, file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	said := strings.Join(strings.Fields(string(text)), " ")
	at := 0
	for n := 1; n <= 15; n++ {
		next := strings.Index(said[at:], fmt.Sprintf("Step %d ·", n))
		if next < 0 {
			t.Fatalf("step %d is not printed after the one before it", n)
		}
		at += next
	}
	for _, furniture := range []string{"Skip the contents", "Next box", "Clear ticks", "ticked"} {
		if strings.Contains(said, furniture) {
			t.Errorf("%q is printed", furniture)
		}
	}
}
