package main

func explainCheck(e env, args []string) int { return exitOK }
