package main

import (
	"fmt"
	"io"
	"time"
)

// meter tells a person at a terminal how many of how many are done, once a second has passed; nil where nobody
// looks.
func meter(w io.Writer, what string) func(done, of int) {
	if progressOn(w) == nil {
		return nil
	}
	start, last := time.Now(), time.Now()
	return func(done, of int) {
		if now := time.Now(); now.Sub(start) > time.Second && (now.Sub(last) > time.Second/5 || done == of) {
			fmt.Fprintf(w, "\r%-78.78s", fmt.Sprintf("%d of %d %s", done, of, what))
			last = now
		}
	}
}

// wipe takes the line of a meter away.
func wipe(p func(done, of int), w io.Writer) {
	if p != nil {
		fmt.Fprintf(w, "\r%78s\r", "")
	}
}
