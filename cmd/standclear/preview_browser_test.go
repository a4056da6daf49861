//go:build browser

package main

import (
	"context"
	"fmt"
	"io"
	"net/url"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/cdproto/log"
	"github.com/chromedp/cdproto/network"
	"github.com/chromedp/cdproto/runtime"
	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"

	"standclear/detail/demo"
)

// patience is how long anything on the page may take: no measure, only the end of waiting.
const patience = 5 * time.Minute

// browserTest is the command running in this process and a headless browser that looks at its page.
type browserTest struct {
	*testing.T
	ctx  context.Context
	file string
	text string // in the file
	page string // address
	code chan int

	lock  sync.Mutex
	asked []string // addresses the browser asked for
	wrong []string // what the browser complained of
}

// startPreview starts the command on the inch deck, its heat known, and opens the page.
func startPreview(t *testing.T, flags ...string) *browserTest {
	t.Helper()
	cache := t.TempDir()
	t.Setenv("XDG_CACHE_HOME", cache)
	if err := copyKept(cache); err != nil {
		t.Fatal(err)
	}
	src, ok := demo.File("deck")
	if !ok {
		t.Fatal("there is no demo deck")
	}
	b := &browserTest{T: t, file: filepath.Join(t.TempDir(), "deck.yaml"), text: string(src), code: make(chan int, 1)}
	b.save(b.text)
	out, in := io.Pipe()
	go func() {
		b.code <- run(append([]string{"preview", b.file}, flags...), env{strings.NewReader(""), in, os.Stderr})
		in.Close()
	}()
	line := make([]byte, 4096)
	n, err := out.Read(line)
	if err != nil {
		t.Fatal(err)
	}
	go io.Copy(io.Discard, out)
	if b.page = regexp.MustCompile(`http://127\.0\.0\.1:\d+/`).FindString(string(line[:n])); b.page == "" {
		t.Fatalf("no address in %q", line[:n])
	}
	opts := append(slices.Clone(chromedp.DefaultExecAllocatorOptions[:]), chromedp.WindowSize(1400, 1000))
	if os.Getuid() == 0 {
		opts = append(opts, chromedp.NoSandbox)
	}
	alloc, endAlloc := chromedp.NewExecAllocator(context.Background(), opts...)
	ctx, end := chromedp.NewContext(alloc)
	t.Cleanup(func() { end(); endAlloc() })
	b.ctx = ctx
	if err := chromedp.Listen(ctx, b.listen); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(ctx, network.Enable, network.EnableParams{}); err != nil {
		t.Fatal(err)
	}
	if _, err := chromedp.Call(ctx, log.Enable, cdp.Empty{}); err != nil {
		t.Fatal(err)
	}
	b.do(chromedp.Navigate(b.page + "#A-201"))
	return b
}

// listen notes what the browser asks for and what it complains of.
func (b *browserTest) listen(ev any) {
	b.lock.Lock()
	defer b.lock.Unlock()
	switch ev := ev.(type) {
	case *network.EventRequestWillBeSent:
		b.asked = append(b.asked, ev.Request.URL)
	case *log.EventEntryAdded:
		b.wrong = append(b.wrong, ev.Entry.Text+" "+ev.Entry.URL)
	case *runtime.EventExceptionThrown:
		b.wrong = append(b.wrong, ev.ExceptionDetails.Text)
	}
}

// complaints returns what the browser has complained of since the last call.
func (b *browserTest) complaints() []string {
	b.lock.Lock()
	defer b.lock.Unlock()
	out := b.wrong
	b.wrong = nil
	return out
}

func (b *browserTest) do(a ...chromedp.Action[chromedp.Void]) {
	b.Helper()
	ctx, end := context.WithTimeout(b.ctx, patience)
	defer end()
	if err := chromedp.Do(ctx, a...); err != nil {
		b.Fatal(err)
	}
}

// until waits for a condition on the page and for the frame after it to be painted.
func (b *browserTest) until(what, js string) {
	b.Helper()
	ctx, end := context.WithTimeout(b.ctx, patience)
	defer end()
	painted := `new Promise(done => requestAnimationFrame(() => setTimeout(() => done(true))))`
	if err := chromedp.Do(ctx, chromedp.Poll[chromedp.Void](js, chromedp.WithPollingTimeout(0)), chromedp.Evaluate[chromedp.Void](painted, chromedp.EvalAwaitPromise)); err != nil {
		b.Fatalf("%s: %v; the page says %q", what, err, b.says("document.body.innerText"))
	}
}

// says returns a text of the page.
func (b *browserTest) says(js string) string {
	b.Helper()
	s, err := chromedp.Run(b.ctx, chromedp.Evaluate[string](js))
	if err != nil {
		b.Fatal(err)
	}
	return s
}

// save puts the text into the file as an editor does that writes beside it and renames.
func (b *browserTest) save(text string) {
	b.Helper()
	if err := os.WriteFile(b.file+"~", []byte(text), 0o666); err != nil {
		b.Fatal(err)
	}
	if err := os.Rename(b.file+"~", b.file); err != nil {
		b.Fatal(err)
	}
}

// with is the project with one text in it replaced.
func (b *browserTest) with(was, is string) string {
	b.Helper()
	if strings.Count(b.text, was) != 1 {
		b.Fatalf("%q stands %d times in the demo", was, strings.Count(b.text, was))
	}
	return strings.Replace(b.text, was, is, 1)
}

// redrawn saves the text and waits until the drawing says so; it returns how long that took.
func (b *browserTest) redrawn(text, says string) time.Duration {
	b.Helper()
	start := time.Now()
	b.save(text)
	b.until("the sheet shows "+says, drawingSays(says))
	return time.Since(start)
}

// choose looks at another sheet.
func (b *browserTest) choose(sheet string) {
	b.Helper()
	b.do(chromedp.Click(chromedp.CSS(`nav a[href="#` + sheet + `"]`)))
	b.until("sheet "+sheet, `document.querySelector('#sheet-title').textContent.startsWith('`+sheet+`')`)
}

func drawingSays(text string) string {
	return fmt.Sprintf(`document.querySelector('#drawing svg')?.textContent.includes(%q)`, text)
}

// A person works at the file with the page beside it.
func TestBrowserPreview(t *testing.T) {
	b := startPreview(t)
	b.until("the first drawing", drawingSays(`14'-8"`))
	if got, want := b.says("document.title"), "PENNANT HOUSE - REAR DECK LEDGER"; got != want {
		t.Errorf("the page is called %q, want %q", got, want)
	}
	if n := b.says(`document.querySelectorAll('#rows tr').length + ' ' + document.querySelectorAll('#rows tr.fails').length`); !regexp.MustCompile(`^[1-9]\d+ 0$`).MatchString(n) {
		t.Errorf("checks and failing checks: %s", n)
	}

	// The keyboard reaches the sheets, the buttons and the drawing, and shows where it is.
	var stops []string
	for range 60 {
		b.do(chromedp.KeyEvent(kb.Tab))
		at := b.says(`(e => e.id || e.className || e.textContent)(document.activeElement) + ' ' + getComputedStyle(document.activeElement).outlineStyle`)
		if stops = append(stops, at); strings.HasPrefix(at, "drawing ") {
			break
		}
	}
	for _, want := range []string{"skip solid", "A-301 SECTIONS AT BLOCK AND BETWEEN BLOCKS solid", "larger solid", "whole solid", "drawing solid"} {
		if !slices.Contains(stops, want) {
			t.Errorf("the keyboard does not reach %s: %q", want, stops)
		}
	}

	const viewBox = `document.querySelector('#drawing svg').getAttribute('viewBox')`
	// Closer, and to the right: the view stays when the drawing is another.
	whole := b.says(viewBox)
	b.do(chromedp.Focus(chromedp.CSS("#drawing")), chromedp.KeyEvent("+++"), chromedp.KeyEvent(kb.ArrowRight))
	view := b.says(viewBox)
	t.Logf("saved to painted, elevation: %v", b.redrawn(b.with(`length: 14'-8"`, `length: 14'-9"`), `14'-9"`))
	if got := b.says(viewBox); got != view || view == whole {
		t.Errorf("the view was %s and is %s", view, got)
	}
	b.until("the heat is being solved", `document.querySelector('#doing').textContent.includes('NOT CHECKED')`)
	if got := b.says(`document.querySelector('#verdict').textContent`); !regexp.MustCompile(`[1-9]\d* not checked`).MatchString(got) {
		t.Errorf("with the heat unknown the verdict is %q", got)
	}

	// A mistake is told at its place, over the last good drawing, which is said to be old.
	b.save(b.with(`length: 14'-8"`, "length: 14.9\n  <b id=hostile>: 1"))
	b.until("the mistake", `!document.querySelector('#trouble').hidden`)
	told := b.says(`document.querySelector('#trouble').innerText`)
	for _, want := range []string{b.file + `:142:11: ledger.length: "14.9" has no unit`, b.file + `:143:3: ledger.<b id=hostile>`, "OLD"} {
		if !strings.Contains(told, want) {
			t.Errorf("%q is not in what is told: %s", want, told)
		}
	}
	if got := b.says(`[document.title.slice(0, 11), document.querySelector('#verdict').textContent, String(document.getElementById('hostile')), String(` + drawingSays(`14'-9"`) + `)].join()`); got != "NOT CURRENT,NOT CURRENT,null,true" {
		t.Errorf("beside a mistake: %s", got)
	}

	// Mended in place, as an editor does that writes over the file; a name is text, whatever it looks like.
	hostile := `<img src=x onerror="document.body.remove()">`
	if err := os.WriteFile(b.file, []byte(b.with("name: PENNANT HOUSE", `name: '`+hostile+`'`)), 0o666); err != nil {
		t.Fatal(err)
	}
	b.until("the mended file", `document.querySelector('#trouble').hidden && `+drawingSays(`14'-8"`))
	if got := b.says(`document.querySelector('#title').textContent + document.querySelectorAll('img').length`); got != hostile+" - REAR DECK LEDGER0" {
		t.Errorf("a hostile name became %s", got)
	}

	// The file goes and comes back.
	if err := os.Remove(b.file); err != nil {
		t.Fatal(err)
	}
	b.until("that the file is gone", `document.querySelector('#trouble').innerText.includes('cannot be read: no such file')`)
	b.save(b.text)
	b.until("the file again", `document.querySelector('#trouble').hidden && document.title.startsWith('PENNANT')`)

	// A failing design says so, and the change that mends it follows.
	b.save(b.with("hanger: 750lb", "hanger: 100lb"))
	b.until("the failing check", `document.querySelector('#verdict.bad')?.textContent.startsWith('DO NOT BUILD')`)
	b.until("what mends it", `!document.querySelector('#doing').textContent.includes('smallest changes')`)
	b.save(b.text)
	b.until("the good design", `document.querySelector('#verdict').textContent.startsWith('0 fail')`)

	// The sheet of the heat is kept, as an old one, while the heat of another ledger is being solved.
	b.choose("A-311")
	b.save(b.with(`length: 14'-8"`, `length: 14'-9"`))
	b.until("that the sheet of the heat is old", `document.querySelector('#absent').textContent.startsWith('A-311 is not in the set') && document.querySelector('#drawing.old svg') !== null`)
	b.save(b.text)
	b.until("the sheet of the heat again", `document.querySelector('#absent').hidden && document.querySelector('#drawing:not(.old) svg') !== null`)

	for _, sheet := range []string{"A-101", "A-201", "A-301", "S-503"} {
		b.choose(sheet)
		for _, inches := range []string{"10", "11", "7"} {
			mark := "HASTE " + sheet + " " + inches
			text := strings.Replace(b.with(`length: 14'-8"`, `length: 14'-`+inches+`"`), "PENNANT HOUSE\n  element", mark+"\n  element", 1)
			t.Logf("saved to painted, %s with a ledger of 14'-%s\": %v", sheet, inches, b.redrawn(text, mark))
		}
	}

	// The heat of the last ledger is solved, without being asked for, and shown.
	b.until("the heat", `document.querySelector('#doing').textContent === '' && document.querySelector('#verdict').textContent.includes(' 0 not checked')`)

	// Nothing came from elsewhere, and the browser had nothing to say against the page.
	b.lock.Lock()
	for _, a := range b.asked {
		if u, err := url.Parse(a); err != nil || u.Scheme+"://"+u.Host+"/" != b.page {
			t.Errorf("the page asked for %s", a)
		}
	}
	if len(b.asked) == 0 {
		t.Error("nothing was asked for")
	}
	b.lock.Unlock()
	if c := b.complaints(); len(c) > 0 {
		t.Errorf("the browser complains: %q", c)
	}

	// Ctrl-C ends it, and the page says so.
	if err := syscall.Kill(os.Getpid(), syscall.SIGINT); err != nil {
		t.Fatal(err)
	}
	if code := <-b.code; code != exitOK {
		t.Errorf("left with %d", code)
	}
	b.until("that it has ended", `document.querySelector('#trouble-title').textContent.includes('has ended')`)
}
