"""Writes written-by-nbformat.ipynb. Run with nbformat 5.11.1: python write-sample.py"""

import nbformat
from nbformat.v4 import new_code_cell, new_markdown_cell, new_notebook, new_output, new_raw_cell

code = new_code_cell("const a = 1;\r\nconsole.log(a);\n\n// \u00e9, \U0001f40e, \u2028 and \x0b within a line\n", id="code-1", execution_count=3)
code.metadata.tags = ["parameters"]
code.outputs = [
    new_output("stream", name="stdout", text="one\ntwo\rthree\x0cfour\x1cfive\x85six\u2029seven"),
    new_output("display_data", data={"text/html": "<b>\n\u00e9</b>\n", "image/png": "iVBORw0KGgo=\n", "image/svg+xml": "<svg>\n</svg>",
               "application/vnd.vegalite.v5+json": {"z": [1, 2.5, None], "a": {"text": "line\nline"}}, "text/plain": ""}, metadata={"image/png": {"width": 10}}),
    new_output("execute_result", data={"application/json": ["x\ny"], "application/javascript": "1;\n2"}, execution_count=3),
    new_output("error", ename="Error", evalue="no\ngood", traceback=["a\nb", "c"]),
]
empty = new_code_cell("", id="empty_2")
note = new_markdown_cell("# Title\n\nText", id="note", attachments={"p.svg": {"image/svg+xml": "<svg>\n</svg>"}})
raw = new_raw_cell("raw\n", id="raw")
notebook = new_notebook(cells=[note, code, empty, raw], metadata={
    "language_info": {"name": "typescript"}, "kernelspec": {"name": "tslab", "display_name": "TypeScript", "language": "typescript"}})
nbformat.validate(notebook)
nbformat.write(notebook, "written-by-nbformat.ipynb", version=4)
