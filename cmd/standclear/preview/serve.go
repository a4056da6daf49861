package preview

import (
	"context"
	"crypto/sha256"
	"embed"
	"encoding/base64"
	"errors"
	"io"
	"log"
	"net"
	"net/http"
	"strconv"
	"time"

	"standclear/render/svg"
)

//go:embed page
var page embed.FS

// quiet drops what net/http says of broken connections.
var quiet = log.New(io.Discard, "", 0)

// policy lets the page load its own script and style, ask its own server, and nothing else. The two hashes allow what
// every drawing says of its style.
func policy() string {
	hash := func(text string) string {
		sum := sha256.Sum256([]byte(text))
		return "'sha256-" + base64.StdEncoding.EncodeToString(sum[:]) + "'"
	}
	element, attribute := svg.Styles()
	return "default-src 'none'; script-src 'self'; connect-src 'self'; style-src 'self' 'unsafe-hashes' " + hash(element) + " " + hash(attribute) +
		"; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
}

// handler answers the few paths there are. None of them names a file.
func (s *Server) handler() http.Handler {
	m := http.NewServeMux()
	m.HandleFunc("GET /{$}", static("page/page.html", "text/html; charset=utf-8"))
	m.HandleFunc("GET /page.css", static("page/page.css", "text/css; charset=utf-8"))
	m.HandleFunc("GET /page.js", static("page/page.js", "text/javascript; charset=utf-8"))
	m.HandleFunc("GET /state", s.state)
	m.HandleFunc("GET /sheet/{id}", s.sheet)
	return s.guard(m)
}

// guard answers only pages of this server: a name that some other server has turned to this machine, and a page of
// elsewhere, are refused.
func (s *Server) guard(next http.Handler) http.Handler {
	port := strconv.Itoa(s.ln.Addr().(*net.TCPAddr).Port)
	policy := policy()
	ours := map[string]bool{"127.0.0.1:" + port: true, "localhost:" + port: true}
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		if r.ContentLength != 0 { // what nobody reads may not be sent for ever
			_ = http.NewResponseController(w).SetReadDeadline(time.Now().Add(s.header))
		}
		h := w.Header()
		h.Set("Content-Security-Policy", policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cache-Control", "no-store")
		switch {
		case !ours[r.Host]:
			http.Error(w, "this server is asked for under another name", http.StatusForbidden)
		case !ownOrigin(r):
			http.Error(w, "asked for by a page of elsewhere", http.StatusForbidden)
		case r.Method != http.MethodGet && r.Method != http.MethodHead:
			h.Set("Allow", "GET, HEAD")
			http.Error(w, "nothing can be changed here", http.StatusMethodNotAllowed)
		case r.URL.RawPath != "": // slashes written as %2f would be taken for real ones
			http.NotFound(w, r)
		default:
			next.ServeHTTP(w, r)
		}
	})
}

// ownOrigin reports whether a page of this server asks, or a person who followed a link or typed the address.
func ownOrigin(r *http.Request) bool {
	for _, o := range r.Header.Values("Origin") {
		if o != "http://"+r.Host {
			return false
		}
	}
	switch r.Header.Get("Sec-Fetch-Site") {
	case "", "same-origin", "none":
		return true
	}
	return r.URL.Path == "/" && r.Header.Get("Sec-Fetch-Mode") == "navigate" && r.Header.Get("Sec-Fetch-Dest") == "document"
}

// static serves one file of the program.
func static(name, kind string) http.HandlerFunc {
	b, err := page.ReadFile(name)
	if err != nil {
		panic(err) // embedded
	}
	return func(w http.ResponseWriter, _ *http.Request) { send(w, kind, b) }
}

func send(w http.ResponseWriter, kind string, b []byte) {
	w.Header().Set("Content-Type", kind)
	w.Header().Set("Content-Length", strconv.Itoa(len(b)))
	_, _ = w.Write(b) // who has left reads nothing
}

// state sends the state as soon as its number is not the one that the page has, or after a while as it is.
func (s *Server) state(w http.ResponseWriter, r *http.Request) {
	number, err := strconv.Atoi(r.URL.Query().Get("after"))
	if err != nil {
		http.Error(w, "after: a number is needed", http.StatusBadRequest)
		return
	}
	select {
	case s.waiters <- struct{}{}:
		defer func() { <-s.waiters }()
	default:
		w.Header().Set("Retry-After", "1")
		http.Error(w, "too many pages wait for news", http.StatusServiceUnavailable)
		return
	}
	ctx, done := context.WithTimeout(r.Context(), s.hold)
	defer done()
	send(w, "application/json", s.news.after(ctx, number))
}

// sheet sends a sheet of the model of the number that the page has; of any other it would mix two states.
func (s *Server) sheet(w http.ResponseWriter, r *http.Request) {
	number, err := strconv.Atoi(r.URL.Query().Get("drawing"))
	if err != nil {
		http.Error(w, "drawing: a number is needed", http.StatusBadRequest)
		return
	}
	m := s.news.drawing(number)
	if m == nil {
		http.Error(w, "the file has changed since", http.StatusConflict)
		return
	}
	s.lookAt(r.PathValue("id"))
	b, err := m.draw(r.PathValue("id"))
	switch {
	case errors.Is(err, errNoSheet):
		http.Error(w, err.Error(), http.StatusNotFound)
	case err != nil:
		http.Error(w, err.Error(), http.StatusInternalServerError)
	default:
		send(w, "image/svg+xml", b)
	}
}
