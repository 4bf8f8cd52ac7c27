package org.scrubline.demo.plan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.scrubline.demo.plan.DemoCast.Supervisor;
import org.scrubline.rubric.Band;
import org.scrubline.rubric.Procedures;
import org.scrubline.rubric.Rubric;

/** Draws what every supervisor says of the same films: one truth a film, seen through the habits of nine. */
public final class ClipDraw {

    private static final long KEY = -7;

    /** Planning happens before the film begins. */
    private static final String NOT_ON_FILM = "TF01";

    /** What a film shows, and the level of whoever operates in it, before the ease of a step. */
    private record Film(int month, String title, Band band, double shown) {}

    private static final List<Film> FILMS = List.of(
            new Film(2, "A first operation, calm and slow", Band.A, 3.0),
            new Film(2, "Mobile conjunctiva, a flap of even depth", Band.A, 4.1),
            new Film(2, "A flap cut too thin on one side", Band.B, 2.5),
            new Film(2, "Bleeding from the bed of the flap", Band.B, 3.3),
            new Film(2, "A chamber that shallows at the end", Band.C, 3.6),
            new Film(2, "Thick Tenon’s in a young eye", Band.D, 3.1),
            new Film(14, "Sutures tied to the pressure", Band.A, 4.2),
            new Film(14, "A closure that leaks at the limbus", Band.A, 2.8),
            new Film(14, "Iris at the ostium", Band.B, 3.2),
            new Film(14, "A deep flap, put right in time", Band.B, 3.6),
            new Film(14, "A short eye, chamber kept formed", Band.C, 3.9),
            new Film(14, "A second operation beside a scar", Band.D, 2.6));

    private ClipDraw() {}

    /**
     * The films of a plan, in the order in which they are scored.
     *
     * @param seed the same seed gives the same scores
     */
    public static List<PlannedClip> draw(long seed, DemoRubrics rubrics) {
        Levels levels = new Levels(seed);
        List<PlannedClip> clips = new ArrayList<>();
        Map<Integer, Integer> before = new LinkedHashMap<>();
        for (Film film : FILMS) {
            int number = before.merge(film.month(), 1, Integer::sum);
            Draws draws = Draws.of(seed, KEY, film.month(), number);
            Rubric rubric = rubrics.of(Procedures.TRAB_FORNIX, film.month());
            Map<String, Double> truth = levels.truth(rubric, film.shown() - Levels.cost(film.band()), draws);
            truth.remove(NOT_ON_FILM);
            Map<String, Map<String, Integer>> scores = new LinkedHashMap<>();
            for (Supervisor scorer : DemoCast.SUPERVISORS) {
                scores.put(scorer.id(), levels.film(truth, scorer, draws));
            }
            clips.add(new PlannedClip(
                    "REF-" + film.month() + "-" + number, film.title(), film.month(), film.band(), scores));
        }
        return clips;
    }
}
