package org.scrubline.scoring.curve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Who is linked with whom through shared scoring. Two groups without a common trainee or supervisor can only be
 * compared through the priors.
 */
final class Connections {

    private final List<int[]> supervisorGroups = new ArrayList<>();
    private final List<List<Integer>> traineeGroups = new ArrayList<>();

    private Connections(int[] groupOfSupervisor, int groups) {
        for (int g = 0; g < groups; g++) {
            int group = g;
            int[] members = IntStream.range(0, groupOfSupervisor.length)
                    .filter(v -> groupOfSupervisor[v] == group)
                    .toArray();
            supervisorGroups.add(members);
            traineeGroups.add(new ArrayList<>());
        }
    }

    static Connections of(ScoreTable table) {
        int[] parent = new int[table.supervisors.size()];
        Arrays.setAll(parent, v -> v);
        int[] anySupervisor = new int[table.trainees.size()];
        for (int t = 0; t < table.trainees.size(); t++) {
            int first = table.assessmentStart[table.caseStart[t]];
            int end = table.assessmentStart[table.caseStart[t + 1]];
            anySupervisor[t] = table.supervisor[first];
            for (int j = first + 1; j < end; j++) {
                join(parent, table.supervisor[first], table.supervisor[j]);
            }
        }
        int[] group = new int[parent.length];
        int groups = 0;
        for (int v = 0; v < parent.length; v++) {
            int root = root(parent, v);
            group[v] = root == v ? groups++ : group[root];
        }
        Connections connections = new Connections(group, groups);
        for (int t = 0; t < anySupervisor.length; t++) {
            connections.traineeGroups.get(group[anySupervisor[t]]).add(t);
        }
        return connections;
    }

    /** The smaller index becomes the root, so groups are numbered in the order of their first supervisor. */
    private static void join(int[] parent, int a, int b) {
        int ra = root(parent, a);
        int rb = root(parent, b);
        parent[Math.max(ra, rb)] = Math.min(ra, rb);
    }

    private static int root(int[] parent, int v) {
        int root = v;
        while (parent[root] != root) {
            parent[root] = parent[parent[root]];
            root = parent[root];
        }
        return root;
    }

    List<int[]> supervisorGroups() {
        return supervisorGroups;
    }

    /** Trainees of a group, in their order. */
    List<Integer> trainees(int group) {
        return traineeGroups.get(group);
    }
}
