package org.scrubline.backup;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A million signed steps through a heap of 128 MB, both ways. */
class BackupSizeSoak {

    private static final String MILLION = """
            insert into signed_step (tenant_id, signed_sheet_id, step_code, critical, state, level, cause)
            select '00000000-0000-4000-8000-000000000001', '00000000-0000-4000-8000-000000000081',
                   'X' || n, n % 3 = 0, 'SCORED', 1 + n % 5, null
            from generate_series(1, 1000000) n
            """;

    @TempDir
    Path directory;

    @Test
    void aMillionRowsStreamThroughASmallHeap() throws Exception {
        SampleInstallation source = SampleInstallation.onServer().filled();
        source.run(MILLION);
        SampleInstallation target = SampleInstallation.onServer();
        Path file = directory.resolve("million.backup");
        run(source.line("backup", "--out", file));
        run(target.line("restore", "--from", file));
        assertThat(target.column("select count(*) from signed_step")).containsExactly("1000002");
        System.out.println("Size of the file: " + Files.size(file) + " bytes");
    }

    private static void run(List<String> command) throws Exception {
        List<String> line = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx128m",
                "-cp",
                System.getProperty("java.class.path"),
                "org.scrubline.Scrubline"));
        line.addAll(command);
        long begun = System.nanoTime();
        assertThat(new ProcessBuilder(line).inheritIO().start().waitFor()).isZero();
        System.out.println(command.get(0) + ": "
                + Duration.ofNanos(System.nanoTime() - begun).toMillis() + " ms");
    }
}
