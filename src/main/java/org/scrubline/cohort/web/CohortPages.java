package org.scrubline.cohort.web;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.scrubline.cohort.CohortReport;
import org.scrubline.cohort.Timeliness;
import org.scrubline.cohort.WorthALook;
import org.scrubline.people.Programme;
import org.scrubline.people.ProgrammeSettings;
import org.scrubline.platform.Wording;
import org.scrubline.progress.StepProgress;
import org.scrubline.rubric.Rubric;
import org.scrubline.rubric.Step;
import org.springframework.stereotype.Component;

/** Makes the director's page. */
@Component
class CohortPages {

    private static final DateTimeFormatter MOMENT = DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm z", Locale.UK);

    private final Wording wording;
    private final Grid grid;
    private final TraineeTable trainees;

    CohortPages(Wording wording, Grid grid, TraineeTable trainees) {
        this.wording = wording;
        this.grid = grid;
        this.trainees = trainees;
    }

    CohortPage page(CohortReport report, List<Programme> programmes, List<Rubric> procedures, RowFilter filter) {
        Rubric rubric = report.rubric();
        return new CohortPage(
                report.programme().id().toString(),
                report.programme().name(),
                rubric.procedure(),
                rubric.title(),
                programmes.stream()
                        .map(programme -> new CohortPage.Option(programme.id().toString(), programme.name()))
                        .toList(),
                procedures.stream()
                        .map(procedure -> new CohortPage.Option(procedure.procedure(), procedure.title()))
                        .toList(),
                filter.value(),
                Stream.of(RowFilter.values())
                        .map(one -> new CohortPage.Option(one.value(), wording.text("cohort.show." + one)))
                        .toList(),
                facts(report),
                report.cases() == 0,
                rubric.steps().stream().map(Step::name).toList(),
                filter.of(report.rows()).stream()
                        .map(row -> grid.row(row, rubric))
                        .toList(),
                grid.scale(),
                report.worthALook().stream()
                        .map(look -> look(look, rubric.procedure(), report.settings()))
                        .toList(),
                trainees.of(report, filter.of(report.rows())),
                timely(report.timeliness(), report.settings()),
                wording.text("cohort.timely.of", report.timeliness().sheets()));
    }

    private List<CohortPage.Fact> facts(CohortReport report) {
        return List.of(
                counted("cohort.fact.trainees", report.rows().size()),
                counted("cohort.fact.cases", report.cases()),
                counted("cohort.fact.contested", report.contested()),
                counted("cohort.fact.never", report.timeliness().never()),
                counted("cohort.fact.awaiting", report.awaiting()),
                new CohortPage.Fact(
                        null,
                        wording.text(
                                "cohort.fact.at",
                                MOMENT.format(
                                        report.at().atZone(report.programme().zone())))));
    }

    private CohortPage.Fact counted(String key, int count) {
        return new CohortPage.Fact(Integer.toString(count), wording.text(key, count));
    }

    private List<CohortPage.Fact> timely(Timeliness timeliness, ProgrammeSettings settings) {
        long late = settings.lateAfter().toHours();
        long closed = settings.closedAfter().toDays();
        return List.of(
                part("day", timeliness.withinDay(), timeliness, late),
                part("three-days", timeliness.within72Hours(), timeliness, late),
                part("late", timeliness.late(), timeliness, late),
                part("waiting", timeliness.waiting(), timeliness, closed),
                part("never", timeliness.never(), timeliness, closed));
    }

    private CohortPage.Fact part(String key, int count, Timeliness timeliness, long limit) {
        return new CohortPage.Fact(
                Integer.toString(count), wording.text("cohort.timely." + key, timeliness.percent(count), limit));
    }

    private CohortPage.Look look(WorthALook look, String procedure, ProgrammeSettings settings) {
        StepProgress step = look.step();
        String name = look.trainee().printedName();
        String key = "cohort.look." + look.kind();
        if (step == null) {
            return new CohortPage.Look(
                    Links.trainee(look.trainee().id(), procedure),
                    name,
                    wording.text(key, look.has(), look.of(), settings.mostByOne()),
                    wording.text(key + ".change"));
        }
        return new CohortPage.Look(
                Links.step(look.trainee().id(), procedure, step.step().code()),
                wording.text("cohort.look.step", name, step.step().name()),
                wording.text(
                        key,
                        look.has(),
                        look.of(),
                        Math.round(100 * step.interval().low()),
                        Math.round(100 * step.interval().high()),
                        step.lowCases(),
                        step.lowScorers(),
                        Math.round(100 * look.others())),
                wording.text(key + ".change"));
    }
}
