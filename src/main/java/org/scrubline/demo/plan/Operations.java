package org.scrubline.demo.plan;

import static java.util.Objects.requireNonNull;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.scrubline.casework.Eye;
import org.scrubline.demo.plan.DemoCast.Place;
import org.scrubline.rubric.Band;

/** Gives every slot its procedure and complexity, so that the table of each place comes out. */
final class Operations {

    /** A beginner's first cases are of band A or B. */
    private static final int PLAIN_CASES = 10;

    private static final double BEGINNER = 3;

    private static final Map<Band, List<List<String>>> FACTORS = Map.of(
            Band.A,
            List.of(List.of(), List.of(), List.of(), List.of("ONLY_EYE")),
            Band.B,
            List.of(
                    List.of("ANTICOAGULANT"),
                    List.of("YOUNG"),
                    List.of("WITH_CATARACT"),
                    List.of("PSEUDOEXFOLIATION"),
                    List.of("ANGLE_CLOSURE"),
                    List.of("MYOPIA"),
                    List.of("SCARRED")),
            Band.C,
            List.of(
                    List.of("FAILED_FILTER"),
                    List.of("NEOVASCULAR"),
                    List.of("SCARRED", "YOUNG"),
                    List.of("HIGH_PRESSURE", "UVEITIC")),
            Band.D,
            List.of(
                    List.of("FAILED_FILTER", "SCARRED"),
                    List.of("HIGH_PRESSURE", "NEOVASCULAR", "UVEITIC"),
                    List.of("FAILED_FILTER", "POOR_ACCESS", "YOUNG")));

    private final List<Slot> slots;
    private final Draws draws;

    Operations(List<Slot> slots, Draws draws) {
        this.slots = slots;
        this.draws = draws;
    }

    List<Operation> draw() {
        Map<Integer, String> procedures = new HashMap<>();
        Map<Integer, Band> bands = new HashMap<>();
        for (Place place : DemoCast.PLACES) {
            List<Integer> here = IntStream.range(0, slots.size())
                    .filter(i -> slots.get(i).site().equals(place.code()))
                    .boxed()
                    .toList();
            assign(procedures, draws.shuffled(here), DemoCast.PROCEDURES, place.cases());
            List<Integer> parts = Apportioned.of(place.bands(), here.size());
            List<Integer> ordered = hardLast(draws.shuffled(here), parts.get(2) + parts.get(3));
            assign(bands, ordered, List.of(Band.values()), place.bands());
        }
        List<Operation> operations = new ArrayList<>();
        for (int i = 0; i < slots.size(); i++) {
            Band band = requireNonNull(bands.get(i));
            Eye eye = draws.chance(.5) ? Eye.RIGHT : Eye.LEFT;
            operations.add(new Operation(
                    i,
                    slots.get(i),
                    requireNonNull(procedures.get(i)),
                    band,
                    draws.pick(requireNonNull(FACTORS.get(band))),
                    eye));
        }
        return operations;
    }

    private static <T> void assign(Map<Integer, T> to, List<Integer> slots, List<T> values, List<Integer> weights) {
        List<T> spread = Apportioned.spread(values, Apportioned.of(weights, slots.size()));
        for (int i = 0; i < slots.size(); i++) {
            to.put(slots.get(i), spread.get(i));
        }
    }

    /** Bands from A to D; the hard ones are given out last, to slots that are no beginner's first. */
    private List<Integer> hardLast(List<Integer> shuffled, int hard) {
        List<Integer> later = shuffled.stream().filter(slot -> !early(slot)).toList();
        List<Integer> last = later.subList(Math.max(0, later.size() - hard), later.size());
        List<Integer> ordered = new ArrayList<>(shuffled);
        ordered.removeAll(last);
        ordered.addAll(last);
        return ordered;
    }

    private boolean early(int slot) {
        String trainee = slots.get(slot).trainee();
        return DemoCast.trainee(trainee).start() < BEGINNER
                && slots.subList(0, slot).stream()
                                .filter(before -> before.trainee().equals(trainee))
                                .count()
                        < PLAIN_CASES;
    }
}
