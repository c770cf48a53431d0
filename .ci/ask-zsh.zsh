# ask-zsh.zsh FOLDER LINE: what zsh offers at the end of a line, with the completion functions of a folder. A terminal of its own is opened for it.
zmodload zsh/zpty || exit 2
zpty asked zsh -f -i
say() { zpty -w asked "$1"; }
say "PS1= RPS1=; unsetopt zle_bracketed_paste 2>/dev/null; stty cols 200; fpath=($1 \$fpath); autoload -U compinit; compinit -u -D; LISTMAX=10000; zstyle ':completion:*' list-prompt ''; zstyle ':completion:*' menu no; setopt no_list_beep no_always_last_prompt; bindkey '^X' list-choices; bindkey '^I' expand-or-complete; print READY"
local text= chunk=
until [[ $text == *READY*READY* ]]; do zpty -r asked chunk || break; text+=$chunk; done
zpty -n -w asked "$2"$'\t'
text=
integer waited=0
while (( waited++ < 40 )); do
    sleep 0.05
    while zpty -r -t asked chunk; do text+=$chunk; waited=20; done
done
zpty -d asked
print -r -- $text
