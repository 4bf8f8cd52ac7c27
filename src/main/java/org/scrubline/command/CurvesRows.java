package org.scrubline.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.scoring.curve.CaseContext;
import org.scrubline.scoring.curve.ObservedScore;
import org.scrubline.scoring.curve.ScoreTableBuilder;

/** Splits and checks the rows of a score file. */
final class CurvesRows {

    private static final List<String> COLUMNS = List.of(
            "assessment", "trainee", "case_index", "experience", "gap_excess", "supervisor", "step", "lo", "hi");

    private final BufferedReader lines;
    private final ScoreTableBuilder builder;
    private final Map<String, String> ids = new HashMap<>();
    private final List<String> cells = new ArrayList<>();
    private final int[] place = new int[COLUMNS.size()];
    private final List<Integer> covariates = new ArrayList<>();
    private int columns;
    private int line;

    CurvesRows(BufferedReader lines, ScoreTableBuilder builder) {
        this.lines = lines;
        this.builder = builder;
    }

    void read() throws IOException {
        header();
        for (String text = lines.readLine(); text != null; text = lines.readLine()) {
            line++;
            if (!text.isBlank()) {
                row(text);
            }
        }
    }

    private void header() throws IOException {
        String text = lines.readLine();
        line = 1;
        if (text == null) {
            throw new CurvesProblem("the score file is empty; its first row must name the columns");
        }
        split(text.startsWith("\uFEFF") ? text.substring(1) : text);
        columns = cells.size();
        for (int c = 0; c < place.length; c++) {
            place[c] = cells.indexOf(COLUMNS.get(c));
            if (place[c] < 0) {
                throw new CurvesProblem("the score file has no column " + COLUMNS.get(c));
            }
        }
        for (int x = 1; cells.contains("x" + x); x++) {
            covariates.add(cells.indexOf("x" + x));
        }
    }

    private void row(String text) {
        split(text);
        if (cells.size() != columns) {
            throw problem("has " + cells.size() + " cells, the header has " + columns);
        }
        try {
            List<Double> x = new ArrayList<>();
            covariates.forEach(c -> x.add(Double.parseDouble(cells.get(c))));
            String caseId = id(2);
            CaseContext context = new CaseContext(
                    caseId, Long.parseLong(caseId), Double.parseDouble(cell(3)), Double.parseDouble(cell(4)), x);
            builder.add(new ObservedScore(
                    id(0), id(1), id(5), context, id(6), Integer.parseInt(cell(7)), Integer.parseInt(cell(8))));
        } catch (NumberFormatException e) {
            throw problem("holds a cell that is not a number: " + text);
        } catch (IllegalArgumentException e) {
            throw problem(": " + e.getMessage());
        }
    }

    private CurvesProblem problem(String what) {
        return new CurvesProblem("score file, line " + line + (what.startsWith(":") ? "" : " ") + what);
    }

    private String cell(int column) {
        return cells.get(place[column]);
    }

    /** One copy of each id, whatever the number of rows. */
    private String id(int column) {
        String text = cell(column);
        if (text.isEmpty()) {
            throw problem("has no " + COLUMNS.get(column));
        }
        return ids.computeIfAbsent(text, t -> t);
    }

    private void split(String text) {
        cells.clear();
        int at = 0;
        while (at <= text.length()) {
            boolean quoted = at < text.length() && text.charAt(at) == '"';
            at = quoted ? quoted(text, at + 1) : plain(text, at);
        }
    }

    private int plain(String text, int from) {
        int comma = text.indexOf(',', from);
        int end = comma < 0 ? text.length() : comma;
        cells.add(text.substring(from, end).strip());
        return end + 1;
    }

    private int quoted(String text, int from) {
        StringBuilder cell = new StringBuilder();
        int at = from;
        while (at < text.length()) {
            char c = text.charAt(at++);
            if (c != '"') {
                cell.append(c);
            } else if (at < text.length() && text.charAt(at) == '"') {
                cell.append(text.charAt(at++));
            } else {
                cells.add(cell.toString());
                if (at < text.length() && text.charAt(at) != ',') {
                    throw problem("has text after a closing quote");
                }
                return at + 1;
            }
        }
        throw problem("has a quote that is not closed");
    }
}
