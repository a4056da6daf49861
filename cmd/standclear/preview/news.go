package preview

import (
	"context"
	"encoding/json"
	"errors"
	"sync"

	"standclear/render/html"
)

// state is what the page shows, as it is sent.
type state struct {
	Number   int      `json:"number"`   // of this state, from 1
	File     string   `json:"file"`     // name
	Read     bool     `json:"read"`     // the file was looked at
	Problems []string `json:"problems"` // of the file as it is now; what is drawn is then of an earlier one
	Drawing  int      `json:"drawing"`  // number of the model; 0 before the first
	Title    string   `json:"title"`
	Verdict  string   `json:"verdict"`
	Bad      bool     `json:"bad"`
	Doing    string   `json:"doing"`
	Warnings []string `json:"warnings"`
	Notes    []string `json:"notes"`
	Head     []string `json:"head"`
	Rows     []row    `json:"rows"`
	Sheets   []Entry  `json:"sheets"`
}

type row struct {
	Cells []string `json:"cells"`
	Class string   `json:"class"`
	Sheet string   `json:"sheet"`
}

// news holds the state of things and tells who waits for the next.
type news struct {
	sync.Mutex
	now   state
	sent  []byte        // now, encoded
	shown *shown        // the model of now; nil before the first
	next  chan struct{} // closed when now is past
}

func (n *news) start(file string) {
	n.next = make(chan struct{})
	n.now = state{File: file, Problems: []string{}}
	n.tell()
}

// tell numbers and sends the state; the lock is held, but at the start.
func (n *news) tell() {
	n.now.Number++
	sent, err := json.Marshal(n.now)
	if err != nil {
		panic(err) // texts and numbers alone
	}
	n.sent = sent
	close(n.next)
	n.next = make(chan struct{})
}

// problems replaces the problems of the file, unless ctx has ended: then the file has changed again.
func (n *news) problems(ctx context.Context, list []string) {
	n.Lock()
	defer n.Unlock()
	if ctx.Err() != nil {
		return
	}
	n.now.Read, n.now.Problems, n.now.Doing = true, list, ""
	n.tell()
}

// model replaces the model and takes the problems away; nil when ctx has ended.
func (n *news) model(ctx context.Context, m Model) *shown {
	n.Lock()
	defer n.Unlock()
	if ctx.Err() != nil {
		return nil
	}
	n.shown = newShown(m)
	n.now = state{
		Number: n.now.Number, File: n.now.File, Read: true, Problems: []string{}, Drawing: n.now.Drawing + 1,
		Title: m.Checks.Title, Verdict: m.Checks.Verdict, Bad: m.Checks.Bad, Doing: m.Doing,
		Warnings: m.Warnings, Notes: m.Checks.Notes, Head: m.Checks.Head, Rows: rows(m.Checks.Rows), Sheets: m.Sheets,
	}
	n.tell()
	return n.shown
}

func rows(of []html.Row) []row {
	out := []row{}
	for _, r := range of {
		out = append(out, row(r))
	}
	return out
}

// after returns the state as it is sent, as soon as its number is not the given one or ctx has ended.
func (n *news) after(ctx context.Context, number int) []byte {
	for {
		n.Lock()
		sent, is, next := n.sent, n.now.Number, n.next
		n.Unlock()
		if is != number {
			return sent
		}
		select {
		case <-ctx.Done():
			return sent
		case <-next:
		}
	}
}

// drawing returns the model of that number; nil when it is not the one that is shown.
func (n *news) drawing(number int) *shown {
	n.Lock()
	defer n.Unlock()
	if n.now.Drawing != number {
		return nil
	}
	return n.shown
}

// shown is a model whose sheets are drawn when they are asked for, once and one at a time.
type shown struct {
	Model
	drawing sync.Mutex
	sheets  map[string]*drawn
}

type drawn struct {
	once sync.Once
	svg  []byte
	err  error
}

func newShown(m Model) *shown {
	s := &shown{Model: m, sheets: map[string]*drawn{}}
	for _, e := range m.Sheets {
		s.sheets[e.ID] = &drawn{}
	}
	return s
}

// errNoSheet is that the set has no such sheet.
var errNoSheet = errors.New("there is no such sheet in this set")

func (s *shown) draw(id string) ([]byte, error) {
	d, ok := s.sheets[id]
	if !ok {
		return nil, errNoSheet
	}
	d.once.Do(func() {
		s.drawing.Lock()
		defer s.drawing.Unlock()
		defer func() {
			if r := recover(); r != nil {
				d.err = errors.New(fault("sheet "+id, r))
			}
		}()
		d.svg, d.err = s.Draw(id)
	})
	return d.svg, d.err
}
