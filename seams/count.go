package seams

// Thread numbering. Tex is grams per 1,000 m. Definitions as given in Thread
// Numbering (a thread maker's bulletin 05) and, for tickets, in "Metric ticket
// no." worked tables; every function expects a number above zero.

// TexFromDecitex converts grams per 10,000 m.
func TexFromDecitex(dtex float64) float64 { return dtex / 10 }

// TexFromDenier converts grams per 9,000 m.
func TexFromDenier(denier float64) float64 { return denier / 9 }

// TexFromNm converts the metric count, metres per gram.
func TexFromNm(nm float64) float64 { return 1000 / nm }

// TexFromNe converts the English cotton count, hanks of 840 yd per pound.
func TexFromNe(ne float64) float64 { return 590.54 / ne }

// TexFromTicket converts the metric ticket, three times the resultant Nm.
func TexFromTicket(ticket float64) float64 { return 3000 / ticket }

// TicketFromTex is the metric ticket: it falls as the thread grows thicker.
func TicketFromTex(tex float64) float64 { return 3000 / tex }

// TexFromCottonTicket converts the cotton ticket, three times the resultant Ne.
func TexFromCottonTicket(ticket float64) float64 { return 3 * 590.54 / ticket }

// Resultant is the count of a thread from that of one ply, for counts that
// fall as a thread grows thicker (Nm, Ne): Nm 80/2 is 40.
func Resultant(count float64, plies int) float64 { return count / float64(plies) }
