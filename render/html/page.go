package html

import (
	"bytes"
	"fmt"
	"html"
	"io"
	"strings"
)

// page is a page on its way: what is put into it says no more than its words.
type page struct{ b bytes.Buffer }

// drawn is what goes onto a page as it is: a picture or the style, nothing of a user's words.
type drawn []byte

// add puts tags onto the page, of a format with %s for text, between tags or within quotes, and for what is drawn, and
// %v for numbers.
func (p *page) add(tags string, values ...any) {
	for i, v := range values {
		switch v.(type) {
		case drawn, float64:
		default:
			values[i] = html.EscapeString(strings.ReplaceAll(fmt.Sprint(v), "\x00", "\ufffd")) // no page may hold 0
		}
	}
	fmt.Fprintf(&p.b, tags, values...)
}

// begun is a page with its head.
func begun(title, style string) *page {
	p := &page{}
	p.add("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n"+
		"<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>%s</title>\n<style>\n%s</style>\n</head>\n<body>\n",
		title, drawn(style))
	return p
}

// verdict adds the one line under the title.
func (p *page) verdict(text string, bad bool) {
	class := "verdict"
	if bad {
		class = "verdict bad"
	}
	p.add(`<p class="%s">%s</p>`+"\n", class, text)
}

// list adds notes, one under the other.
func (p *page) list(notes []string) {
	p.add("<ul>")
	for _, n := range notes {
		p.add("<li>%s</li>", n)
	}
	p.add("</ul>\n")
}

// end writes the page, UTF-8 whatever its texts are.
func (p *page) end(w io.Writer) error {
	p.b.WriteString("</body>\n</html>\n")
	_, err := w.Write(bytes.ToValidUTF8(p.b.Bytes(), []byte("\ufffd")))
	return err
}
