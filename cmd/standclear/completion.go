package main

import (
	"fmt"
	"io"
	"strings"

	"github.com/spf13/pflag"
)

// shellNames are the shells a completion script is printed for.
func shellNames() []string { return []string{"bash", "zsh", "fish"} }

// printCompletion prints the completion script of a shell, made from the table of commands.
func printCompletion(e env, args []string) int {
	f := pflag.NewFlagSet("completion", pflag.ContinueOnError)
	if code, ok := parse(e, f, "standclear completion SHELL\nprints a script that completes commands, flags and their words in a shell. SHELL is one of "+strings.Join(shellNames(), ", ")+".",
		"  standclear completion bash >~/.local/share/bash-completion/completions/standclear\n  standclear completion zsh >~/.zfunc/_standclear\n  standclear completion fish >~/.config/fish/completions/standclear.fish\n", args); !ok {
		return code
	}
	write, ok := map[string]func(p *printed, of []declaration){"bash": bashCompletion, "zsh": zshCompletion, "fish": fishCompletion}[f.Arg(0)]
	if ok && f.NArg() == 1 {
		return written(e, "completion", func(w io.Writer) error {
			p := &printed{w: w}
			write(p, declared())
			return p.err
		})
	}
	fmt.Fprintf(e.err, "standclear completion: given %q; one of %s is needed\n", strings.Join(f.Args(), " "), strings.Join(shellNames(), ", "))
	return exitInput
}

// arguments are the words a command may have as its argument; file is true when it takes a file.
func (d *declaration) arguments() (of []string, file bool) {
	switch d.args {
	case "SHELL":
		return shellNames(), false
	case "[NAME]":
		return layerNames(), false
	case "":
		return nil, false
	}
	return nil, true
}

// each calls do for every flag, in the order declared.
func (d *declaration) each(do func(f *pflag.Flag)) { d.flags.VisitAll(do) }

// options are the flags as typed: --out, -o.
func (d *declaration) options() []string {
	out := []string{"--help"}
	d.each(func(f *pflag.Flag) {
		out = append(out, "--"+f.Name)
		if f.Shorthand != "" {
			out = append(out, "-"+f.Shorthand)
		}
	})
	return out
}

// usageOf is what a flag is for, without the quotes about the name of its value.
func usageOf(f *pflag.Flag) string {
	_, usage := pflag.UnquoteUsage(f)
	return usage
}

// takes reports whether a flag wants a value after it.
func takes(f *pflag.Flag) bool { return f.NoOptDefVal == "" }

// bashCompletion leaves COMPREPLY empty where a file may stand: bash then completes files itself.
func bashCompletion(p *printed, of []declaration) {
	offer := func(depth, words string) {
		p.f("%sCOMPREPLY=($(compgen -W %s -- \"$cur\"))\n", depth, words)
	}
	p.f("# bash completion of standclear; made by: standclear completion bash\n# shellcheck disable=SC2207\n\n_standclear() {\n\tlocal cur=${COMP_WORDS[COMP_CWORD]} prev='' options='' words=''\n\tCOMPREPLY=()\n\tif ((COMP_CWORD == 1)); then\n")
	offer("\t\t", "'"+strings.Join(namesOf(of), " ")+" --help --version'")
	p.f("\t\treturn\n\tfi\n\tprev=${COMP_WORDS[COMP_CWORD-1]}\n\tcase \"${COMP_WORDS[1]} $prev\" in\n")
	for i := range of {
		d := &of[i]
		d.each(func(f *pflag.Flag) {
			if !takes(f) {
				return
			}
			p.f("\t'%s --%s'", d.name, f.Name)
			if f.Shorthand != "" {
				p.f(" | '%s -%s'", d.name, f.Shorthand)
			}
			p.f(")\n")
			if list, _ := words(f); len(list) > 0 {
				offer("\t\t", "'"+strings.Join(list, " ")+"'")
			}
			p.f("\t\treturn\n\t\t;;\n")
		})
	}
	p.f("\tesac\n\tcase ${COMP_WORDS[1]} in\n")
	for i := range of {
		d := &of[i]
		list, _ := d.arguments()
		p.f("\t%s)\n\t\toptions='%s'\n", d.name, strings.Join(d.options(), " "))
		if len(list) > 0 {
			p.f("\t\twords='%s'\n", strings.Join(list, " "))
		}
		p.f("\t\t;;\n")
	}
	p.f("\tesac\n\tif [[ $cur == -* ]]; then\n")
	offer("\t\t", `"$options"`)
	p.f("\telif [[ -n $words ]]; then\n")
	offer("\t\t", `"$words"`)
	p.f("\tfi\n}\ncomplete -o default -F _standclear standclear\n")
}

func namesOf(of []declaration) []string {
	var out []string
	for _, d := range of {
		out = append(out, d.name)
	}
	return out
}

func zshCompletion(p *printed, of []declaration) {
	p.f("#compdef standclear\n# zsh completion of standclear; made by: standclear completion zsh\n\n_standclear() {\n\tlocal -a commands\n\tcommands=(\n")
	for _, d := range of {
		p.f("\t\t'%s:%s'\n", d.name, zshText(d.about))
	}
	p.f("\t)\n\tif ((CURRENT == 2)); then\n\t\t_describe -t commands command commands\n\t\treturn\n\tfi\n\tlocal command=$words[2]\n\tshift words\n\t((CURRENT--))\n\tcase $command in\n")
	for i := range of {
		d := &of[i]
		p.f("\t%s)\n\t\t_arguments -s \\\n\t\t\t'--help[list the flags]'", d.name)
		d.each(func(f *pflag.Flag) {
			value := ""
			if takes(f) {
				value = ":" + f.Name + ":" + zshValue(f)
			}
			star := ""
			if strings.HasSuffix(f.Value.Type(), "Array") {
				star = "*"
			}
			names := "'" + star + "--" + f.Name
			if f.Shorthand != "" {
				names = "{-" + f.Shorthand + ",--" + f.Name + "}'"
			}
			p.f(" \\\n\t\t\t%s[%s]%s'", names, zshText(usageOf(f)), value)
		})
		switch list, file := d.arguments(); {
		case file:
			p.f(" \\\n\t\t\t'1:file:_files'")
		case len(list) > 0:
			p.f(" \\\n\t\t\t'1:name:(%s)'", strings.Join(list, " "))
		}
		p.f("\n\t\t;;\n")
	}
	p.f("\tesac\n}\n\nif [[ $zsh_eval_context[-1] == loadautofunc ]]; then\n\t_standclear \"$@\"\nelse\n\tcompdef _standclear standclear\nfi\n")
}

// zshValue says what completes the value of a flag.
func zshValue(f *pflag.Flag) string {
	switch list, free := words(f); {
	case free:
		return ""
	case len(list) > 0:
		return "(" + strings.Join(list, " ") + ")"
	}
	return "_files"
}

// zshText makes a text fit to stand between brackets and single quotes.
func zshText(s string) string {
	return strings.NewReplacer("'", `'\''`, "[", `\[`, "]", `\]`, ":", `\:`).Replace(s)
}

func fishCompletion(p *printed, of []declaration) {
	p.f("# fish completion of standclear; made by: standclear completion fish\n\ncomplete -c standclear -f\ncomplete -c standclear -n __fish_use_subcommand -l help -d 'list the commands'\ncomplete -c standclear -n __fish_use_subcommand -l version -d 'print the version'\n")
	for _, d := range of {
		p.f("complete -c standclear -n __fish_use_subcommand -a %s -d '%s'\n", d.name, fishText(d.about))
	}
	for i := range of {
		d := &of[i]
		on := "complete -c standclear -n '__fish_seen_subcommand_from " + d.name + "'"
		p.f("\n%s -l help -d 'list the flags'\n", on)
		d.each(func(f *pflag.Flag) {
			p.f("%s -l %s", on, f.Name)
			if f.Shorthand != "" {
				p.f(" -s %s", f.Shorthand)
			}
			if takes(f) {
				switch list, free := words(f); {
				case free:
					p.f(" -x")
				case len(list) > 0:
					p.f(" -x -a '%s'", strings.Join(list, " "))
				default:
					p.f(" -r -F")
				}
			}
			p.f(" -d '%s'\n", fishText(usageOf(f)))
		})
		switch list, file := d.arguments(); {
		case file:
			p.f("%s -F\n", on)
		case len(list) > 0:
			p.f("%s -a '%s'\n", on, strings.Join(list, " "))
		}
	}
}

// fishText makes a text fit to stand between single quotes.
func fishText(s string) string { return strings.NewReplacer(`\`, `\\`, "'", `\'`).Replace(s) }
