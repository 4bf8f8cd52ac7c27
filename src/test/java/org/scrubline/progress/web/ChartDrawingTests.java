package org.scrubline.progress.web;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.scrubline.support.ASignedSheet.ofDay;

import java.io.StringReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.scrubline.people.Person;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.platform.TableView.Cell;
import org.scrubline.progress.ProcedureProgress;
import org.scrubline.progress.TraineeProgress;
import org.scrubline.rubric.Rubric;
import org.scrubline.signoff.SignedSheet;
import org.scrubline.support.ASignedSheet;
import org.scrubline.support.ScrublineTest;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.mock.web.MockServletContext;
import org.thymeleaf.context.WebContext;
import org.thymeleaf.spring6.SpringTemplateEngine;
import org.thymeleaf.web.servlet.JakartaServletWebApplication;
import org.w3c.dom.Document;
import org.xml.sax.InputSource;

/** The drawing of a history made by hand: a signal at case 12, a gap of 90 days, then three critical events in a row. */
@ScrublineTest
class ChartDrawingTests {

    private static final Path GOLDEN = Path.of("src/test/resources/progress/critical-events.svg");
    private static final Map<UUID, Rubric> RUBRICS = Map.of(ASignedSheet.VERSION, ASignedSheet.RUBRIC);

    @Autowired
    private ProgressPages pages;

    @Autowired
    private SpringTemplateEngine engine;

    @Test
    void theDrawingIsTheGoldenOne() throws Exception {
        assertThat(svg(chart("S1"))).isEqualToNormalizingNewlines(Files.readString(GOLDEN));
    }

    @Test
    void theDrawingIsWellFormedAndNamed() throws Exception {
        Document document = xml(svg(chart("")));

        assertThat(document.getDocumentElement().getAttribute("role")).isEqualTo("img");
        assertThat(document.getElementsByTagName("title").item(0).getTextContent())
                .isEqualTo("Cases with a critical event");
        assertThat(document.getElementsByTagName("desc").item(0).getTextContent())
                .contains("18 cases in order, 4 of them with a critical event", "limit 2.99", "30 planned cases");
    }

    @Test
    void theTableHoldsTheNumbersOfTheDrawing() {
        ProgressPage.ChartView view = chart("S1");
        List<String> drawn = new ArrayList<>();
        view.drawing()
                .lines()
                .forEach(line -> drawn.addAll(List.of(line.points().split(" "))));
        double zero = Double.parseDouble(view.drawing().base());
        double unit = (zero - Double.parseDouble(view.drawing().limitY())) / 2.99;

        for (List<Cell> row : view.table().rows()) {
            double value = Double.parseDouble(row.get(4).text());
            assertThat(drawn)
                    .as("case %s", row.get(0).text())
                    .anySatisfy(point -> assertThat((zero - Double.parseDouble(point.split(",")[1])) / unit)
                            .isCloseTo(value, within(.008)));
        }
        assertThat(view.table().rows())
                .extracting(row -> row.get(5).text())
                .contains("signal at case 12", "more again at case 17");
        assertThat(view.drawing().signals())
                .extracting(ChartDrawing.Mark::label)
                .containsExactly("signal at case 12", "more again at case 17");
        assertThat(view.table().rows()).extracting(row -> row.get(2).text()).containsOnlyOnce("90");
    }

    @Test
    void eachStrokeIsAScoreAndItsHeightTheLevel() {
        ProgressPage.ChartView view = chart("S1");
        double foot = Double.parseDouble(view.drawing().strokeBase());
        double unit = (foot - Double.parseDouble(view.drawing().strokeTop())) / 5;

        assertThat(view.drawing().strokes())
                .extracting(stroke -> Math.round((foot - Double.parseDouble(stroke.y())) / unit))
                .containsExactlyElementsOf(view.table().rows().stream()
                        .flatMap(row -> List.of(row.get(6).text().split(", ")).stream())
                        .map(Long::valueOf)
                        .toList());
    }

    @Test
    void theLineIsBrokenOverATimeAway() {
        ChartDrawing drawing = chart("").drawing();

        assertThat(drawing.gaps())
                .singleElement()
                .satisfies(gap -> assertThat(gap.label()).isEqualTo("90 days away"));
        assertThat(drawing.lines())
                .extracting(ChartDrawing.Line::kind)
                .as("up to the signal, to the gap, after it, and anew after the second signal")
                .containsExactly("thread", "watch", "watch", "watch");
    }

    @Test
    void theWordsSayTheSignalAndWhatItDoesNotSay() {
        ProgressPage.ChartView view = chart("");

        assertThat(view.meaning())
                .startsWith("The chart reached its limit at case 12: if 30 % of cases had a critical event")
                .contains("10 of 100 series of 30 cases", "reached the limit again at case 17");
        assertThat(view.limits()).contains("a lasting weak step can hide");
    }

    private ProgressPage.ChartView chart(String step) {
        ProcedureProgress progress = ProcedureProgress.of(history(), RUBRICS::get, ProgrammeSettings.DEFAULTS)
                .orElseThrow();
        TraineeProgress read =
                new TraineeProgress(new Person(ASignedSheet.TRAINEE, "Fenna Hallinor", true), List.of(progress));
        ProgressPage.ChartView view = pages.page(read, progress, step).chart();
        assertThat(view).isNotNull();
        return java.util.Objects.requireNonNull(view);
    }

    /** Twelve clean cases a week apart, one clean the week after; away; two with an event apart, then two more. */
    private static List<SignedSheet> history() {
        List<SignedSheet> sheets = new ArrayList<>();
        for (int week = 0; week < 13; week++) {
            sheets.add(sheet(7 * week, 3 + week % 3, week % 3));
        }
        int back = 7 * 12 + 90;
        sheets.add(sheet(back, 2, 1));
        sheets.add(sheet(back + 7, 4, 2));
        sheets.add(sheet(back + 14, 1, 1));
        sheets.add(sheet(back + 21, 2, 2));
        sheets.add(sheet(back + 28, 2, 0));
        UUID shared = sheets.get(5).caseId();
        sheets.add(ofDay(35).inCase(shared).by(9).level("S1", 5).build());
        return sheets;
    }

    private static SignedSheet sheet(int day, int level, int scorer) {
        return ofDay(day)
                .inCase(new UUID(0x4000L + day, 0x8000000000000000L))
                .by(scorer)
                .level("S1", level)
                .build();
    }

    private String svg(ProgressPage.ChartView view) {
        var application = JakartaServletWebApplication.buildApplication(new MockServletContext());
        var exchange = application.buildExchange(new MockHttpServletRequest(), new MockHttpServletResponse());
        String figure = engine.process(
                "progress/chart", new WebContext(exchange, java.util.Locale.ENGLISH, Map.of("chart", view)));
        return figure.substring(figure.indexOf("<svg"), figure.indexOf("</svg>") + "</svg>".length()) + "\n";
    }

    private static Document xml(String text) throws Exception {
        return DocumentBuilderFactory.newInstance().newDocumentBuilder().parse(new InputSource(new StringReader(text)));
    }
}
