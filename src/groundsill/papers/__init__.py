"""What is handed to people: documents and drawings, made from a finished study.

``document`` has the blocks (heading, step, table, figure, remark) and ``drawing`` the marks on a sheet of fixed scale,
each with the address of the object it shows. ``views`` turn a study into blocks and marks and do no arithmetic;
``writers`` turn those into terminal text, HTML, SVG or Typst and know nothing of houses. Text alternatives are
obligatory.
"""
