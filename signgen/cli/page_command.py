"""`signgen page`: signs drawn and made in a browser on this computer."""

from __future__ import annotations

import click


@click.command("page")
@click.option(
    "--port", metavar="N", type=click.IntRange(0, 65535), default=0, help="Port to serve at; any free one otherwise."
)
@click.option("--browser/--no-browser", default=True, help="Open the page in the browser. Default: yes.")
def command(port: int, browser: bool) -> None:
    """Make signs on a page in the browser, which draws them while you type.

    Prints the page's address and serves it to this computer alone, until it is stopped with Ctrl+C. Nothing is loaded
    from a network, and nothing is written: the page hands over a zip with the files that make writes.
    """
    from signgen.web.serve import served

    with served(port) as (server, address):
        click.echo(address)
        if browser:
            import webbrowser

            webbrowser.open(address)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            click.echo("", err=True)
