// The parts of the completion scripts that are the same whatever the command table holds. @COMMANDS@, @GROUPS@ and
// @CASES@ stand for what is made from it. Both shells call _withy_words, which sets $words, $options, $files (design, any or
// nothing) and $second (files come only behind one of the words) for the command in $command, the word before in
// $previous.
#ifndef WITHY_CLI_COMPLETION_SCRIPTS_H_
#define WITHY_CLI_COMPLETION_SCRIPTS_H_

namespace withy {

inline constexpr char kBashScript[] = R"(# withy completion for bash. Made by `withy --completion bash`.
_withy_words() {
  words=''; options=''; files=''; second=''
  case "$command" in
    '') words='@COMMANDS@'; options='--help --version --completion --manual' ;;
@GROUPS@@CASES@  esac
}

_withy() {
  local current=${COMP_WORDS[COMP_CWORD]} previous=${COMP_WORDS[COMP_CWORD-1]}
  local command='' words options files second word
  if [ "$COMP_CWORD" -gt 1 ]; then command=${COMP_WORDS[1]}; fi
  if [ "$command" = plugin ] && [ "$COMP_CWORD" -gt 2 ]; then command="plugin ${COMP_WORDS[2]}"; fi
  _withy_words
  COMPREPLY=()
  if [ -n "$second" ]; then
    local named=''
    for word in "${COMP_WORDS[@]:2:COMP_CWORD-2}"; do
      case " $words " in *" $word "*) named=yes ;; esac
    done
    if [ -n "$named" ]; then words=''; else files=''; fi
  fi
  if [ -n "$files" ]; then
    local IFS=$'\n'
    for word in $(compgen -f -- "$current"); do
      case "$files:$word" in
        any:* | *.txtpb | *.json | *.binpb) COMPREPLY+=("$word") ;;
        *) if [ -d "$word" ]; then COMPREPLY+=("$word"); fi ;;
      esac
    done
    IFS=$' \t\n'
  fi
  case "$current" in -*) words="$words $options" ;; esac
  COMPREPLY+=($(compgen -W "$words" -- "$current"))
}
complete -o filenames -F _withy withy
)";

inline constexpr char kZshScript[] = R"(#compdef withy
# withy completion for zsh. Made by `withy --completion zsh`.
_withy_words() {
  words=''; options=''; files=''; second=''
  case "$command" in
    '') words='@COMMANDS@'; options='--help --version --completion --manual' ;;
@GROUPS@@CASES@  esac
}

_withy() {
  local -a typed=("${words[@]}")
  local -i at=$CURRENT
  local current=$typed[at] previous=$typed[at-1] command='' options files second word named
  (( at > 2 )) && command=$typed[2]
  [[ $command = plugin ]] && (( at > 3 )) && command="plugin $typed[3]"
  local words
  _withy_words
  if [[ -n $second ]]; then
    for word in "${(@)typed[3,at-1]}"; do [[ " $words " = *" $word "* ]] && named=yes; done
    if [[ -n $named ]]; then words=''; else files=''; fi
  fi
  [[ $current = -* ]] && words="$words $options"
  compadd -- ${=words}
  case $files in
    any) _files ;;
    design) _files -g '*.(txtpb|json|binpb)' ;;
  esac
}
compdef _withy withy
)";

inline constexpr char kFishDesigns[] = R"(function __withy_designs
  set -l part (commandline -ct)
  for file in $part*.txtpb $part*.json $part*.binpb $part*/
    echo $file
  end
end
)";

}  // namespace withy

#endif  // WITHY_CLI_COMPLETION_SCRIPTS_H_
