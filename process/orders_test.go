package process_test

import (
	"strings"
	"testing"

	"bodkin/process"
	"bodkin/templates"
)

// Published orders of construction, in our seams' names, must be orders that the
// derived precedence lets through; the usual mistakes must be refused with a
// reason that names what is in the way.
func TestPublishedOrders(t *testing.T) {
	shelf := loadShelf(t)
	plans := map[string]*process.Plan{}
	for _, name := range templates.Names() {
		g, err := templates.Load(name)
		if err != nil {
			t.Fatal(err)
		}
		plans[name] = plan(t, jobFor(g, "cotton-lawn", "cotton-poplin"), rooms()[0], shelf)
	}
	tests := []struct {
		garment, source string
		order           []string
		refused         []string // words of the reason; none where the order is accepted
	}{
		{"shell-top", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: darts, shoulders, sides, facings, hems",
			[]string{"bust-dart", "shoulder", "side", "neck", "armhole", "hem"}, nil},
		{"shell-top", "The Unit Method of Construction (textbook): darts, shoulders, face the neck, sides, hem",
			[]string{"bust-dart", "shoulder", "neck", "side", "armhole", "hem"}, nil},
		{"pull-on-skirt", "H. Kinne & A. M. Cooley, Clothing and Health, 1916: stitch, belt, hem",
			[]string{"side", "waist", "hem"}, nil},
		{"pull-on-skirt", "Alberta distance-learning sewing pages: a tube casing only after the seams",
			[]string{"side", "hem", "waist"}, nil},
		{"open-jacket", "kimono gown (common practice): shoulders, sleeve ends, sleeve and side seam in one, hem, band along neck and fronts",
			[]string{"overarm", "sleeve", "side", "hem", "front"}, nil},
		{"a-line-skirt", "fitted skirt with an invisible zip (common practice, no source): darts, zip and centre back seam, sides, facing, hem, hook",
			[]string{"front-inner-dart", "front-outer-dart", "back-inner-dart", "back-outer-dart", "zip", "centre-back", "side", "waist", "hem", "hook"}, nil},
		{"boxy-top", "kimono gown (common practice): shoulders, sleeve hems, sleeve and side seam in one, hem, then the neck",
			[]string{"overarm", "sleeve", "side", "hem", "neck-bound"}, nil},
		{"beginner-tunic", "kimono gown (common practice): shoulders, sleeve hems, sleeves in, sleeve and side seam in one, hem, then the neck",
			[]string{"shoulder", "sleeve-hem", "armhole", "side", "front-slit", "back-slit", "front-hem", "back-hem", "neck-faced"}, nil},
		{"circle-skirt", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: seams other than the sides, zips, sides, waistband, hems, closures; the seam of an invisible zip after it",
			[]string{"centre-front", "zip", "centre-back", "side", "waistband", "hem", "waistband-hook"}, nil},
		{"darted-trousers", "a workroom's web page (common practice): front crotch, zip, back crotch, sides, inseams in one line, waistband, hem; the seam of an invisible zip after it",
			[]string{"zip", "front-crotch", "pocket", "back-crotch", "side", "inseam", "waistband", "hem", "waistband-hook"}, nil},
		{"darted-trousers", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: darts, pockets, zip, sides and inseams, waistband, hems, closures",
			[]string{"front-inner-dart", "front-outer-dart", "back-inner-dart", "back-outer-dart", "pocket", "zip", "front-crotch", "back-crotch", "side", "inseam", "waistband", "hem", "waistband-hook"}, nil},
		{"pull-on-trousers", "each leg made, then the crotch in one (from memory), a tube casing after the seams (Alberta distance-learning sewing pages)",
			[]string{"pocket", "side", "inseam", "crotch", "waist", "hem"}, nil},
		{"pleated-skirt", "hem before the pleats that are folded with it (common practice, no source), then placket, belt and hooks (H. Kinne & A. M. Cooley, 1916)",
			[]string{"zip", "centre-back", "side", "hem", "front-pleat", "back-pleat", "waistband", "waistband-hook"}, nil},
		{"apron", "flat details before the rest (common practice, no source): pockets, sides, hem and top, curves, ties",
			[]string{"pocket", "side", "hem", "top", "curve", "neck-tie", "waist-tie"}, nil},
		{"wrap-skirt", "H. Kinne & A. M. Cooley, Clothing and Health, 1916: stitch, belt, hem; the fronts hemmed as one goes (common practice)",
			[]string{"side", "front", "waistband", "hem", "end-tie", "inside-tie", "outside-tie"}, nil},
		{"six-gore-skirt", "Text-Book on Domestic Art (public domain), skirt, gored: front to side gores, side to back, belt, hem; the seam of an invisible zip after it",
			[]string{"front-gore", "zip", "side", "back-gore", "waistband", "hem"}, nil},
		{"wrap-robe", "kimono gown (common practice): shoulders, sleeve hems, sleeves in, sleeve and side seam in one, hem, band along neck and fronts, belt",
			[]string{"shoulder", "sleeve-hem", "armhole", "side", "hem", "front", "belt"}, nil},
		{"knit-tee", "knit top sewn flat (common practice), the variation with both shoulders first: shoulders, neckband, sleeves to body flat, side and underarm in one, hem",
			[]string{"shoulder", "neck", "sleeve-hem", "sleeve-armhole", "side", "hem"}, nil},
		{"bias-slip", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: sides, upper edges, hem; straps last, when their length is tried (common practice)",
			[]string{"side", "top", "neck", "hem", "strap"}, nil},

		{"bias-slip", "strap before the edge that it is sewn on", []string{"side", "strap", "top", "neck", "hem"}, []string{"finished before the strap"}}, {"raglan-blouse", "sleeves in, sleeve and side seam in one (published for a kimono gown, common practice), tube casings only after the seams (Alberta distance-learning sewing pages), hem",
			[]string{"raglan-front", "raglan-back", "side", "neck-elastic", "sleeve-elastic", "hem"}, nil},

		{"raglan-blouse", "casing at the neck before the last raglan seam", []string{"raglan-front", "neck-elastic", "raglan-back", "side"}, []string{"neck edge", "back raglan seam"}}, {"child-dress", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: shoulders, sides, edges of the bodice, bodice to skirt, hems",
			[]string{"shoulder", "side", "neck", "armhole", "skirt-side", "waist", "hem"}, nil},

		{"child-dress", "skirt gathered to the bodice before the sides that it runs over", []string{"shoulder", "waist", "side", "skirt-side"}, []string{"waist seam runs over the end of the bodice side seam"}},
		{"knit-tee", "knit top sewn flat (common practice): neckband on while one shoulder is open, hem before the last side; here neckband and hem are closed rings",
			[]string{"neck", "shoulder", "sleeve-hem", "sleeve-armhole", "hem", "side"}, []string{"neck edge runs over the end of the shoulder seam", "hem runs over the end of the side and underarm seam"}},
		{"darted-trousers", "pocket after the side seam that takes its side piece in", []string{"zip", "front-crotch", "back-crotch", "side", "pocket", "inseam", "waistband", "hem"}, []string{"side seam takes in the side piece of the slanted pocket"}},
		{"darted-trousers", "inseam before the crotch that it runs over", []string{"pocket", "zip", "inseam", "front-crotch", "back-crotch", "side", "waistband", "hem"}, []string{"inseam runs over the end of the front crotch seam"}},
		{"darted-trousers", "waistband before the zip", []string{"pocket", "front-crotch", "back-crotch", "side", "inseam", "waistband", "zip", "hem"}, []string{"waistband closes over the end of the zip"}},
		{"pull-on-trousers", "a workroom's web page sews the crotch before the inseams; here front and back crotch are one seam, which runs over their ends",
			[]string{"crotch", "side", "inseam", "waist", "hem"}, []string{"crotch seam runs over the end of the inseam"}},
		{"pull-on-trousers", "hem before the inseam", []string{"side", "hem", "inseam", "crotch", "waist"}, []string{"leg hem runs over the end of the inseam"}},
		{"pull-on-trousers", "pocket after its seam", []string{"side", "pocket", "inseam", "crotch", "waist", "hem"}, []string{"lie flat"}},
		{"pleated-skirt", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94, has pleats first and hems last; pleats that run out over the hem are laid in it",
			[]string{"front-pleat", "back-pleat", "zip", "centre-back", "side", "waistband", "hem"}, []string{"hem is turned while it lies flat"}},
		{"pleated-skirt", "waistband before the pleats that it takes in", []string{"zip", "centre-back", "side", "hem", "waistband", "front-pleat", "back-pleat"}, []string{"waistband takes in the ends of the front pleat"}},
		{"apron", "binding before the hem whose end it covers", []string{"curve", "side", "hem", "top"}, []string{"covers the end of the side edge"}},
		{"apron", "ties before the edges that they are sewn on", []string{"waist-tie", "side", "hem", "top", "curve"}, []string{"curved edge is finished before the waist tie"}},
		{"wrap-skirt", "waistband before the front edges whose ends it covers", []string{"side", "waistband", "front", "hem"}, []string{"covers the end of the front edge"}},
		{"wrap-skirt", "ties before the band that they are sewn on", []string{"side", "front", "end-tie", "waistband", "hem"}, []string{"waistband is finished before the end tie"}},
		{"six-gore-skirt", "the same book puts the placket in after the seams; an invisible zip differs",
			[]string{"front-gore", "side", "back-gore", "zip", "waistband", "hem"}, []string{"zip in the left side seam is set in while its seam is open"}},
		{"six-gore-skirt", "belt before a gore is joined", []string{"front-gore", "zip", "side", "waistband", "back-gore", "hem"}, []string{"waistband", "back gore seam"}},
		{"circle-skirt", "H. Kinne & A. M. Cooley, Clothing and Health, 1916, stitches all seams before the placket; thin cloth takes an invisible zip, which differs",
			[]string{"centre-front", "centre-back", "side", "zip", "waistband", "hem", "waistband-hook"}, []string{"zip is set in while its seam is open"}},
		{"circle-skirt", "waistband before the zip whose end it closes over", []string{"centre-front", "side", "waistband", "zip", "centre-back", "hem"}, []string{"waistband closes over the end of the zip"}},
		{"circle-skirt", "waistband before a side seam", []string{"centre-front", "centre-back", "zip", "waistband", "side", "hem"}, []string{"waistband", "side seam"}},
		{"circle-skirt", "hook before the waistband", []string{"centre-front", "centre-back", "zip", "side", "waistband-hook", "waistband", "hem"}, []string{"waistband is finished before the waistband hook"}},
		{"waisted-dress", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: darts, shoulders, sides, sleeves, bodice to skirt, zip in a waisted dress, hems, closures",
			[]string{"bust-dart", "front-waist-dart", "back-waist-dart", "front-skirt-dart", "back-skirt-dart", "shoulder", "side", "skirt-side", "sleeve-underarm", "sleeve-armhole", "waist", "zip", "centre-back", "neck", "hem", "hook"}, nil},

		{"shirt-blouse", "shirt at home (common practice; from the sleeves on from memory): front bands and plackets first, yoke, shoulders, collar, sleeves in flat, side and underarm in one, cuffs, hem, buttonholes, buttons",
			[]string{"front-band", "sleeve-placket", "sleeve-pleat", "yoke", "yoke-shoulder", "collar", "sleeve-armhole", "side", "cuff", "hem", "front-buttonhole", "front-button"}, nil},
		{"shirt-dress", "C. Amaden-Crawford, A Guide to Fashion Sewing, pp. 84-94: darts, shoulders, sides, sleeves, bodice to skirt, hems, closures; the front bands run over the waist seam, and the collar over their ends",
			[]string{"front-dart", "back-dart", "yoke", "yoke-shoulder", "sleeve-armhole", "side", "skirt-side", "waist", "front-band", "collar", "hem", "bodice-buttonhole", "skirt-buttonhole", "bodice-button", "skirt-button"}, nil},
		{"lined-waistcoat", "lined jacket (a web page, common): back seams, shoulders, sides, make the lining, put it in, buttonholes, buttons",
			[]string{"centre-back", "shoulder", "side", "lining-centre-back", "lining-shoulder", "lining-side", "lining", "lining-armhole", "front-buttonhole", "front-button"}, nil},
		{"shirt-blouse", "P. Sarkar, operation breakdown of a men's formal shirt, 17 Dec 2011, as far as it can be read: collar and cuffs as parts, sleeve plackets and pleats, fronts, yoke; collar and cuffs are sewn on after it",
			[]string{"sleeve-placket", "sleeve-pleat", "front-band", "yoke", "yoke-shoulder", "collar", "sleeve-armhole", "side", "cuff"}, nil},

		{"lined-waistcoat", "lining put in before its own seams are sewn", []string{"centre-back", "shoulder", "side", "lining-shoulder", "lining", "lining-side", "lining-armhole"}, []string{"lining side seam is sewn before the lining takes in"}},
		{"lined-waistcoat", "armholes, through which it is turned, closed before the lining is in", []string{"centre-back", "shoulder", "side", "lining-centre-back", "lining-shoulder", "lining-side", "lining-armhole", "lining"}, []string{"stays open until that is done"}},
		{"lined-waistcoat", "lining put in before a side seam", []string{"centre-back", "shoulder", "lining-centre-back", "lining-shoulder", "lining-side", "lining", "side"}, []string{"lining runs over the end of the side seam"}},
		{"shirt-blouse", "collar before the front hems, which I. D. Conover, A Complete Course in Dressmaking, vol. 4, 1921-22, finishes first", []string{"yoke", "yoke-shoulder", "collar", "front-band"}, []string{"collar covers the end of the front band"}},
		{"shirt-blouse", "cuff before the seam that closes the sleeve", []string{"yoke", "yoke-shoulder", "sleeve-armhole", "cuff", "side"}, []string{"cuff runs over the end of the side and underarm seam"}},
		{"shirt-blouse", "cuff before the slit that it stops at", []string{"side", "cuff", "sleeve-placket"}, []string{"cuff runs over the end of the sleeve placket", "while the piece lies flat"}},
		{"shirt-blouse", "sleeve sewn in flat, after the seam that runs on along it", []string{"yoke-shoulder", "yoke", "side", "sleeve-armhole"}, []string{"side and underarm seam runs over the end of the armhole seam"}},
		{"shirt-blouse", "collar before the shoulders", []string{"yoke", "front-band", "collar", "yoke-shoulder"}, []string{"collar runs over the end of the shoulder seam"}},
		{"shirt-blouse", "buttons before buttonholes", []string{"front-band", "collar", "front-button", "front-buttonhole"}, []string{"buttons are placed through the buttonholes"}},
		// There the facing comes before the zip; here its ends are felled to the tape.
		{"shirt-dress", "waist seam after the front band that runs over it", []string{"front-dart", "back-dart", "yoke", "yoke-shoulder", "sleeve-armhole", "side", "skirt-side", "front-band", "waist"}, []string{"front band runs over the end of the waist seam"}},
		{"shirt-dress", "buttonholes before the collar is on", []string{"yoke", "yoke-shoulder", "waist", "front-band", "skirt-buttonhole", "collar"}, []string{"closings come last"}},
		{"waisted-dress", "the same, bodice facing before the zip", []string{"shoulder", "side", "neck", "waist", "zip", "centre-back", "hem"}, []string{"neck edge closes over the end of the zip"}},
		{"waisted-dress", "waist seam before the side seams that it runs over", []string{"shoulder", "waist", "side", "skirt-side", "centre-back"}, []string{"waist seam runs over the end of the bodice side seam"}},
		{"waisted-dress", "zip before the waist seam", []string{"shoulder", "side", "skirt-side", "zip", "centre-back", "waist"}, []string{"centre back seam runs over the end of the waist seam"}},
		{"waisted-dress", "sleeve set in before its own seam is sewn", []string{"shoulder", "side", "sleeve-armhole", "sleeve-underarm", "waist", "hem"}, []string{"armhole seam runs over the end of the sleeve underarm seam"}},
		{"a-line-skirt", "invisible zip after its seam", []string{"centre-back", "zip", "side", "waist", "hem"}, []string{"zip is set in while its seam is open"}},
		{"a-line-skirt", "facing before the zip whose end it closes over", []string{"side", "waist", "zip", "centre-back", "hem"}, []string{"waist edge closes over the end of the zip"}},
		{"a-line-skirt", "facing before the darts that shorten its edge", []string{"zip", "centre-back", "side", "waist", "front-inner-dart", "hem"}, []string{"waist edge", "dart"}},
		{"a-line-skirt", "hook before the facing", []string{"zip", "centre-back", "side", "hook", "waist", "hem"}, []string{"waist edge is finished before the hook"}},
		{"boxy-top", "sleeve hem, worked flat, after the seam that closes it", []string{"overarm", "side", "sleeve", "neck-bound", "hem"}, []string{"flat", "closes"}},
		{"beginner-tunic", "The Unit Method of Construction (textbook): sides, then set sleeves; here side and underarm are one seam",
			[]string{"shoulder", "neck-faced", "side", "sleeve-hem", "armhole"}, []string{"side and underarm seam runs over the end of the armhole seam"}},
		{"beginner-tunic", "slit before the seam that it goes on from", []string{"shoulder", "front-slit", "back-slit", "side"}, []string{"goes on from the end"}},
		{"pull-on-skirt", "hem before side seam", []string{"hem", "side", "waist"}, []string{"hem", "side seam"}},
		{"pull-on-skirt", "casing before side seam", []string{"waist", "side", "hem"}, []string{"waist", "side seam"}},
		{"shell-top", "hem before side seam", []string{"bust-dart", "shoulder", "hem", "side", "neck", "armhole"}, []string{"hem", "side seam"}},
		{"shell-top", "neck binding before shoulders", []string{"bust-dart", "neck", "shoulder", "side", "armhole", "hem"}, []string{"neck", "shoulder"}},
		{"shell-top", "armhole binding before the side seam that it runs over", []string{"bust-dart", "shoulder", "neck", "armhole", "side", "hem"}, []string{"armhole", "side"}},
		{"shell-top", "dart after the seam that takes it in", []string{"shoulder", "side", "bust-dart", "neck", "armhole", "hem"}, []string{"dart", "side"}},
		{"open-jacket", "neck band before shoulders", []string{"front", "overarm", "sleeve", "side", "hem"}, []string{"front", "shoulder"}},
		{"open-jacket", "sleeve band, worked flat, after the seam that closes it", []string{"overarm", "side", "sleeve", "hem", "front"}, []string{"flat", "closes"}},
		{"open-jacket", "front band before the hem whose end it covers", []string{"overarm", "sleeve", "side", "front", "hem"}, []string{"covers", "hem"}},
	}
	for _, tt := range tests {
		var told []string
		for _, r := range plans[tt.garment].CheckOrder(tt.order) {
			told = append(told, r.Because)
		}
		got := strings.Join(told, "; ")
		if len(tt.refused) == 0 {
			if got != "" {
				t.Errorf("%s, %s: %v refused: %s", tt.garment, tt.source, tt.order, got)
			}
			continue
		}
		if got == "" {
			t.Errorf("%s, %s: %v accepted", tt.garment, tt.source, tt.order)
		}
		for _, w := range tt.refused {
			if !strings.Contains(got, w) {
				t.Errorf("%s, %s: the reason %q does not speak of %q", tt.garment, tt.source, got, w)
			}
		}
	}
}

// The two ends of the choice, from the workroom's side: no overlocker and a sheer
// cloth, French seams; an overlocker and a firm cotton, not.
func TestFrenchOrNot(t *testing.T) {
	shelf := loadShelf(t)
	tests := []struct {
		garment, cloth string
		machines       []string
		seam           string
		french         bool
		words          string // of the reason against it where it is ruled out
		source         string
	}{
		{"shell-top", "silk-georgette", []string{"straight-stitcher"}, "side", true, "", "sheer and light: Construction Cards No. 810, Oklahoma Cooperative Extension"},
		{"shell-top", "cotton-voile", []string{"straight-stitcher"}, "side", true, "", "same"},
		{"shell-top", "quilting-cotton", []string{"straight-stitcher", "overlocker-4"}, "side", false, "", "common practice, no source"},
		{"pull-on-skirt", "wool-coating", []string{"straight-stitcher"}, "side", false, "ridge", "not in thick fabric: Conover, vol. 1, 1921"},
		{"pull-on-skirt", "velvet", []string{"straight-stitcher"}, "side", false, "pile", "common practice, no source"},
		{"pull-on-skirt", "swimwear-knit", []string{"straight-stitcher"}, "side", false, "stretches", "common practice, no source"},
	}
	for _, tt := range tests {
		g, err := templates.Load(tt.garment)
		if err != nil {
			t.Fatal(err)
		}
		p := plan(t, jobFor(g, tt.cloth, "cotton-lawn"), roomOf("steam", tt.machines...), shelf)
		for _, s := range p.Seams {
			if s.Name != tt.seam {
				continue
			}
			if got := s.Construction == "french"; got != tt.french {
				t.Errorf("%s in %s with %v: the %s is a %s (%s)", tt.garment, tt.cloth, tt.machines, s.Title, s.ConstructionTitle, tt.source)
			}
			var why string
			for _, r := range s.Rejected {
				if r.Construction == "french" {
					why = strings.Join(r.Because, "; ")
				}
			}
			if tt.words != "" && !strings.Contains(why, tt.words) {
				t.Errorf("%s in %s: the reason against a French seam, %q, does not speak of %q", tt.garment, tt.cloth, why, tt.words)
			}
		}
	}
}

// With two machines of one kind of stitch and a tight curve the words still
// hold: the underarm of the jacket is too tight for a French seam in size 76 cm.
func TestTightCurveRulesOutFrench(t *testing.T) {
	shelf := loadShelf(t)
	g, err := templates.Load("open-jacket")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "silk-georgette", "silk-satin")
	j.Size = append(j.Size, pair("bust", "76 cm"))
	p := plan(t, j, rooms()[0], shelf)
	for _, s := range p.Seams {
		if s.Name != "side" {
			continue
		}
		for _, r := range s.Rejected {
			if r.Construction == "french" && r.RuledOut && strings.Contains(strings.Join(r.Because, " "), "curve") {
				return
			}
		}
		t.Errorf("the side seam is a %s; French: %+v", s.ConstructionTitle, s.Rejected)
	}
}

// The crotch of sheer trousers is a mock French seam: "curved seams in sheers and
// lights" (a web page, common), where French on a curve is "possible but needs
// clipping, bad for sheer or fraying fabric" (a web page, seen); the nearly
// straight side seams are French, as sheers almost always are (CT-MMB.179, Univ. of Kentucky
// Extension).
func TestSheerCrotch(t *testing.T) {
	g, err := templates.Load("pull-on-trousers")
	if err != nil {
		t.Fatal(err)
	}
	j := jobFor(g, "silk-georgette", "silk-georgette")
	j.Choices = append(j.Choices, pair("pockets", "none"))
	p := plan(t, j, rooms()[0], loadShelf(t))
	for _, s := range p.Seams {
		if want := map[string]string{"crotch": "mock-french", "side": "french"}[s.Name]; want != "" && s.Construction != want {
			t.Errorf("the %s is a %s, want %s", s.Title, s.Construction, want)
		}
	}
}
