package org.scrubline.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.scrubline.scoring.curve.CompetencyCurve;
import org.scrubline.scoring.curve.CurvePoint;

/** One trainee's curve as a picture: band, line, dashed standard; the line breaks where the trainee was away. */
final class CurvesPicture {

    private static final int WIDTH = 640;
    private static final int HEIGHT = 320;
    private static final int LEFT = 44;
    private static final int RIGHT = 16;
    private static final int TOP = 28;
    private static final int BOTTOM = 48;
    private static final int LINE = 15;

    private final CompetencyCurve curve;
    private final int level;
    private final List<String> notes = new ArrayList<>();
    private final double lowest;
    private final double highest;
    private final double lastCase;
    private final StringBuilder svg = new StringBuilder();

    private CurvesPicture(CompetencyCurve curve, int level) {
        this.curve = curve;
        this.level = level;
        notes.addAll(List.of(curve.evidence().statement().split("(?<=\\.) ")));
        notes.add(CurvesReport.CAUTION);
        double low = -1;
        double high = 1;
        double last = 10;
        for (CurvePoint p : curve.points()) {
            low = Math.min(low, p.low());
            high = Math.max(high, p.high());
            last = Math.max(last, p.experience());
        }
        lowest = Math.floor(low);
        highest = Math.ceil(high);
        lastCase = last;
    }

    /** Writes {@code trainee-ID.svg}; an id that is no plain file name is replaced by the trainee's place. */
    static void write(Path directory, int place, CompetencyCurve curve, int level) throws IOException {
        boolean plain = curve.trainee().matches("[A-Za-z0-9][A-Za-z0-9_-]{0,63}");
        String name = plain ? "trainee-" + curve.trainee() + ".svg" : "trainee.at-" + place + ".svg";
        Files.writeString(directory.resolve(name), new CurvesPicture(curve, level).draw());
    }

    private String draw() {
        svg.append(String.format(
                Locale.ROOT,
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" role=\"img\""
                        + " aria-labelledby=\"t d\" font-family=\"sans-serif\" font-size=\"11\">\n",
                WIDTH,
                HEIGHT + LINE * (notes.size() - 1)));
        svg.append("<title id=\"t\">Curve of trainee ")
                .append(escaped(curve.trainee()))
                .append("</title>\n");
        svg.append("<desc id=\"d\">Level by cases done, with 90 % band; at 0 the mean step reaches level ")
                .append(level)
                .append(" in half of plain cases. ")
                .append(escaped(curve.evidence().statement()))
                .append(" Adjusted for case difficulty and scorer habit.</desc>\n");
        axes();
        int from = 0;
        List<CurvePoint> points = curve.points();
        for (int i = 1; i <= points.size(); i++) {
            if (i == points.size() || points.get(i).gapExcess() > 0) {
                stretch(points.subList(from, i));
                from = i;
            }
        }
        for (int i = 0; i < notes.size(); i++) {
            text(LEFT, HEIGHT - 12 + LINE * i, notes.get(i));
        }
        return svg.append("</svg>\n").toString();
    }

    private void axes() {
        for (double y = lowest; y <= highest; y++) {
            String dash = y == 0 ? " stroke-dasharray=\"2 4\" stroke=\"#222\"" : " stroke=\"#ddd\"";
            svg.append(String.format(
                    Locale.ROOT,
                    "<line x1=\"%d\" x2=\"%d\" y1=\"%.1f\" y2=\"%.1f\"%s/>\n",
                    LEFT,
                    WIDTH - RIGHT,
                    y(y),
                    y(y),
                    dash));
            text(8, y(y) + 4, String.format(Locale.ROOT, "%.0f", y));
        }
        for (int n = 0; n <= lastCase; n += 10) {
            text(x(n) - 4, HEIGHT - BOTTOM + 16, Integer.toString(n));
        }
        text(LEFT, 14, "level in logits above level " + level + ", by cases done");
    }

    private void stretch(List<CurvePoint> points) {
        if (points.isEmpty()) {
            return;
        }
        StringBuilder band = new StringBuilder();
        StringBuilder line = new StringBuilder();
        for (CurvePoint p : points) {
            band.append(at(p.experience(), p.low()));
            line.append(at(p.experience(), p.level()));
        }
        for (int i = points.size() - 1; i >= 0; i--) {
            band.append(at(points.get(i).experience(), points.get(i).high()));
        }
        svg.append("<polygon fill=\"#d8e2ea\" points=\"")
                .append(band.toString().strip())
                .append("\"/>\n<polyline fill=\"none\" stroke=\"#1f4e6b\" stroke-width=\"2.5\" points=\"")
                .append(line.toString().strip())
                .append("\"/>\n");
    }

    private String at(double experience, double value) {
        return String.format(Locale.ROOT, "%.1f,%.1f ", x(experience), y(value));
    }

    private double x(double experience) {
        return LEFT + experience / lastCase * (WIDTH - LEFT - RIGHT);
    }

    private double y(double value) {
        return HEIGHT - BOTTOM - (value - lowest) / (highest - lowest) * (HEIGHT - TOP - BOTTOM);
    }

    private void text(double x, double y, String text) {
        svg.append(String.format(Locale.ROOT, "<text x=\"%.1f\" y=\"%.1f\">%s</text>\n", x, y, escaped(text)));
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;");
    }
}
