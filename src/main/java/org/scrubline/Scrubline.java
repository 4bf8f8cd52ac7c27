package org.scrubline;

import org.springframework.boot.SpringApplication;
import org.springframework.boot.autoconfigure.SpringBootApplication;
import org.springframework.modulith.Modulithic;

/** Starts the web server. */
@SpringBootApplication
@Modulithic(systemName = "Scrubline")
public class Scrubline {

    public static void main(String[] args) {
        SpringApplication.run(Scrubline.class, args);
    }
}
