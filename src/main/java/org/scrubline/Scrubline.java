package org.scrubline;

import java.util.List;
import java.util.OptionalInt;
import org.scrubline.command.Commands;
import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.modulith.Modulithic;

/** Starts the web server, or runs the command the line begins with. */
@SpringBootApplication
@Modulithic(systemName = "Scrubline")
public class Scrubline {

    public static void main(String[] args) {
        OptionalInt exit = Commands.run(List.of(args), System.out, System.err);
        if (exit.isPresent()) {
            System.exit(exit.getAsInt());
        }
        SpringApplication.run(Scrubline.class, args);
    }
}
