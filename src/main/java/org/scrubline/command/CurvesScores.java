package org.scrubline.command;

import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.scrubline.scoring.curve.ScoreTable;
import org.scrubline.scoring.curve.ScoreTableBuilder;

/**
 * The score file of {@code curves}: CSV with a header row, columns in any order, any number of complexity columns
 * {@code x1, x2, ...}. Read row by row; nothing of a row is kept but its score.
 *
 * @param table the scores
 * @param stepOrder step codes in the order of the config's difficulties
 */
record CurvesScores(ScoreTable table, List<String> stepOrder) {

    /** Values by step, from the table's order to the config's. */
    List<Double> inStepOrder(List<Double> byTable) {
        return stepOrder.stream()
                .map(code -> byTable.get(table.steps().indexOf(code)))
                .toList();
    }

    static CurvesScores read(Path file, CurvesConfig config) {
        ScoreTableBuilder builder = new ScoreTableBuilder(config.levels(), config.steps(), List.of());
        try (BufferedReader lines = Files.newBufferedReader(file)) {
            new CurvesRows(lines, builder).read();
        } catch (MalformedInputException e) {
            throw new CurvesProblem(file + " is not UTF-8 text");
        } catch (IOException e) {
            throw new CurvesProblem("cannot read " + file + ": " + e.getMessage());
        }
        return finish(builder, config);
    }

    private static CurvesScores finish(ScoreTableBuilder builder, CurvesConfig config) {
        List<String> appeared = builder.stepsInOrderOfAppearance();
        int count = config.stepCount();
        List<String> order = appeared;
        List<String> numbered =
                IntStream.range(0, count).mapToObj(Integer::toString).toList();
        if (config.steps().isEmpty() && Set.copyOf(numbered).containsAll(appeared)) {
            builder.listSteps(numbered);
            order = numbered;
        }
        if (count > 0 && order.size() != count) {
            throw new CurvesProblem("the config speaks of " + count + " steps, the scores and config list "
                    + order.size() + ": " + order);
        }
        List<String> supervisors = config.supervisors();
        boolean byName = !supervisors.isEmpty() && !supervisors.containsAll(builder.supervisorsSeen());
        if (byName && supervisors.size() < builder.supervisorsSeen().size()) {
            throw new CurvesProblem("the config lists " + supervisors.size() + " supervisors, the scores name "
                    + builder.supervisorsSeen().size());
        }
        builder.listSupervisors(byName ? List.of() : supervisors);
        return new CurvesScores(builder.build(), order);
    }
}
