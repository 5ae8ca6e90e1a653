"""`signgen explain`: what an option, a code or a word means, and answers to questions."""

from __future__ import annotations

import click

from signgen.cli.as_json import echo_json, json_option
from signgen.cli.completion import complete_page
from signgen.cli.tongue import language_option
from signgen.errors import AskError, said_in
from signgen.messages import Message
from signgen.messages.language import LANGUAGES
from signgen.messages.wording import Wording


@click.command("explain")
@click.argument("what", nargs=-1, metavar="WHAT", shell_complete=complete_page)
@click.option("--all", "everything", is_flag=True, help="All of it as one page, with pictures.")
@click.option(
    "--out", metavar="FILE", help="With --all: the file to write, as in reference.html. Default: it is printed."
)
@language_option
@json_option
@click.option("--line", type=click.IntRange(1), metavar="N", help="Of a program file: this line only.")
@click.option("--page", metavar="OUT.html", help="Of a program file: write every line with what it does as a page.")
@click.pass_context
def command(
    context: click.Context,
    what: tuple[str, ...],
    everything: bool,
    out: str | None,
    language: str | None,
    as_json: bool,
    line: int | None,
    page: str | None,
) -> None:
    """Say what an option (cap-height), a check's code (C102), a word of the trade (tab, datum, collet) or of programs
    (G2, M3, F) means, answer a question in plain words ("how do I make the number bigger?"), or tell what every line
    of a program file does.

    recipes shows commands for usual signs, sign-file all keys of a sign file, schema the formats for other programs.
    """
    from signgen.cli.read_out import is_program, read_out
    from signgen.cli.whole_reference import write_reference
    from signgen.guide.pages import answer_to, explained
    from signgen.guide.schemas_page import schema_named
    from signgen.schemas.answers import Explained, ExplainedPage

    if everything:
        if what or as_json:
            raise AskError.at("all", Message("explain.all_is_alone"), Message("explain.leave_the_rest_out"))
        if language is not None and language != LANGUAGES[0]:
            click.echo(Wording(language)(Message("explain.all_in_english")), err=True)
        write_reference(context, out)
        return
    if out is not None:
        raise AskError.at("out", Message("explain.out_is_of_all"), Message("explain.write_all_out"))
    if not what:
        raise AskError.at("explain", Message("explain.nothing_asked"), Message("explain.ask_something"))
    question = " ".join(what)
    if what[0] == "schema" and len(what) == 2:
        click.echo(schema_named(what[1]), nl=False)
        return
    with said_in(language):
        if line is not None or page is not None or (len(what) == 1 and is_program(what[0])):
            read_out(question, language or LANGUAGES[0], line, page, as_json)
            return
        if not as_json:
            click.echo(explained(question, language or LANGUAGES[0]))
            return
        answer = answer_to(question, language or LANGUAGES[0])
    pages = [ExplainedPage(name=page.name, text=page.text()) for page in answer.pages]
    echo_json(Explained(question=question, pages=pages, see_also=list(answer.beside)))
