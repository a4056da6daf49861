// Package preview shows a project on a local web page that follows the file: its sheets and checks are drawn anew
// each time it is saved. It knows files, time and HTTP; what a project is, its caller knows.
//
//	s := preview.New("deck.yaml", read)
//	fmt.Println(s.Listen()) // http://127.0.0.1:40123/
//	err := s.Run(ctx)       // until ctx ends
package preview

import (
	"context"
	"fmt"
	"net"
	"net/http"
	"sync"
	"time"

	"golang.org/x/net/netutil"

	"standclear/render/html"
)

// Model is a project at one state of its file.
type Model struct {
	Checks   html.Page // title, verdict and the table of checks; no sheets
	Warnings []string  // of the file, with their places
	Doing    string    // what is still being worked out, "" when nothing is
	Sheets   []Entry   // in order
	Draw     func(id string) ([]byte, error)
}

// Entry names a sheet.
type Entry struct {
	ID    string `json:"id"`
	Title string `json:"title"`
}

// Read turns the content of the file into Models: the first as soon as it can be shown, a better one each time
// more is known. Publish returns when the sheet that is being looked at has been drawn. Read returns what is wrong
// with the file, each with its place, and gives up when ctx ends.
type Read func(ctx context.Context, src []byte, publish func(Model)) (problems []string)

// limits keep a page, or a flood, from taking more than its share. The figures are judgements.
type limits struct {
	poll    time.Duration // between two looks at the file
	settle  time.Duration // a file that has problems is given this long to be written to its end
	hold    time.Duration // how long a page waits for news before it asks again
	header  time.Duration // to read the head of a request
	write   time.Duration // to answer it, a wait for news included
	idle    time.Duration // a connection may stay open without a request
	conns   int           // connections at once
	waiting int           // pages waiting for news at once
	reading int           // readings of the file at once, the one being given up included
}

var usual = limits{
	poll: 20 * time.Millisecond, settle: 100 * time.Millisecond,
	hold: 20 * time.Second, header: 5 * time.Second, write: 40 * time.Second, idle: time.Minute,
	conns: 64, waiting: 16, reading: 2,
}

// Server shows one project file.
type Server struct {
	name string
	read Read
	limits
	ln      net.Listener
	news    news
	waiters chan struct{} // one for each page that waits
	readers chan struct{} // one for each reading under way
	at      struct {      // what is looked at
		sync.Mutex
		sheet string
	}
}

// New returns a server of the file of that name, which read understands. The caller calls Listen, then Run.
func New(name string, read Read) *Server { return newServer(name, read, usual) }

func newServer(name string, read Read, l limits) *Server {
	s := &Server{name: name, read: read, limits: l, waiters: make(chan struct{}, l.waiting), readers: make(chan struct{}, l.reading)}
	s.news.start(name)
	return s
}

// Listen takes a free port of this machine alone and returns the address of the page.
func (s *Server) Listen() (url string, err error) {
	if s.ln, err = net.Listen("tcp", "127.0.0.1:0"); err != nil {
		return "", err
	}
	return "http://" + s.ln.Addr().String() + "/", nil
}

// Run serves the page and follows the file until ctx ends, which is no error.
func (s *Server) Run(ctx context.Context) error {
	ctx, stop := context.WithCancel(ctx)
	defer stop()
	h := &http.Server{
		Handler:           s.handler(),
		ReadHeaderTimeout: s.header, WriteTimeout: s.write, IdleTimeout: s.idle,
		MaxHeaderBytes: 16 << 10,
		BaseContext:    func(net.Listener) context.Context { return ctx },
		ErrorLog:       quiet,
	}
	var all sync.WaitGroup
	all.Go(func() { s.follow(ctx) })
	all.Go(func() {
		<-ctx.Done()
		last, done := context.WithTimeout(context.Background(), time.Second)
		defer done()
		if h.Shutdown(last) != nil {
			_ = h.Close() // what is still written is no longer read
		}
	})
	err := h.Serve(netutil.LimitListener(s.ln, s.conns))
	if ctx.Err() != nil {
		err = nil
	}
	stop()
	all.Wait()
	return err
}

// follow reads the file anew each time it changes. A reading that has been overtaken is given up.
func (s *Server) follow(ctx context.Context) {
	var all sync.WaitGroup
	defer all.Wait()
	giveUp := func() {}
	defer func() { giveUp() }()
	watch(ctx, s.name, s.poll, func(src []byte, err error) {
		giveUp()
		var reading context.Context
		reading, giveUp = context.WithCancel(ctx)
		all.Go(func() { s.reading(reading, src, err) })
	})
}

// reading reads one state of the file and says what came of it.
func (s *Server) reading(ctx context.Context, src []byte, err error) {
	select {
	case s.readers <- struct{}{}:
		defer func() { <-s.readers }()
	case <-ctx.Done():
		return
	}
	problems := []string{}
	if err != nil {
		problems = append(problems, s.name+": the project file cannot be read: "+err.Error())
	} else {
		problems = s.try(ctx, src)
	}
	if len(problems) == 0 {
		return
	}
	select { // half of a file has problems that the whole does not have
	case <-ctx.Done():
	case <-time.After(s.settle):
		s.news.problems(ctx, problems)
	}
}

// try reads the project; a fault of the program becomes a problem that is shown.
func (s *Server) try(ctx context.Context, src []byte) (problems []string) {
	defer func() {
		if r := recover(); r != nil {
			problems = []string{fault(s.name, r)}
		}
	}()
	return s.read(ctx, src, func(m Model) {
		if shown := s.news.model(ctx, m); shown != nil {
			_, _ = shown.draw(s.lookedAt()) // kept in shown, with its error
		}
	})
}

func fault(where string, r any) string {
	return fmt.Sprintf("%s: a fault of the program, not of your input: %v; please report it with the project file", where, r)
}

// lookedAt returns the sheet that was asked for last; "" at first.
func (s *Server) lookedAt() string {
	s.at.Lock()
	defer s.at.Unlock()
	return s.at.sheet
}

func (s *Server) lookAt(id string) {
	s.at.Lock()
	defer s.at.Unlock()
	s.at.sheet = id
}
