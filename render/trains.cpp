#include <loopwright/render/trains.h>

#include <algorithm>

namespace loopwright {

namespace {

class TrainFinder {
  public:
    explicit TrainFinder(const Sketch& sketch)
        : sketch_(sketch),
          circuit_(sketch.circuit()),
          seen_(circuit_.shafts.size(), false),
          listed_(circuit_.components.size(), false) {}

    std::vector<Train> find() {
        std::vector<Train> trains;
        // A train begins at its driver: a prime mover's shaft, else an actuator's, else any.
        for (int wanted = 0; wanted < 3; ++wanted)
            for (Index shaft = 0; shaft < circuit_.shafts.size(); ++shaft)
                if (!seen_[shaft] && least_class(shaft) <= wanted)
                    trains.push_back(train_from(shaft));
        return trains;
    }

  private:
    /// Place on a shaft: what drives, the rest, what leads on, what is driven.
    int class_of(Index c) const {
        const Component& component = circuit_.components[c];
        if (!component.kind->ends.empty()) return 3;
        switch (component.kind->part) {
            case Part::prime_mover:
                return 0;
            case Part::actuator:
                return 1;
            case Part::load:
                return 4;
            default:
                return 2;
        }
    }
    int least_class(Index shaft) const {
        int least = 4;
        for (const Index c : circuit_.components_of(circuit_.shafts[shaft]))
            least = std::min(least, class_of(c));
        return std::min(least, 2);
    }

    Train train_from(Index first) {
        Train train;
        std::vector<Index> shafts{first};
        seen_[first] = true;
        for (std::size_t i = 0; i < shafts.size(); ++i) {
            const auto on_it = circuit_.components_of(circuit_.shafts[shafts[i]]);
            std::vector<Index> order(on_it.begin(), on_it.end());
            std::stable_sort(order.begin(), order.end(),
                             [this](Index a, Index b) { return class_of(a) < class_of(b); });
            for (const Index c : order) {
                if (listed_[c]) continue;
                listed_[c] = true;
                const Component& component = circuit_.components[c];
                const bool backwards = component.shaft != shafts[i];
                const Index beyond = backwards ? component.shaft : component.far_shaft;
                if (const int p = sketch_.part_of(c); p >= 0)
                    train.push_back({p, backwards, beyond == none ? shafts[i] : beyond});
                if (beyond == none || seen_[beyond]) continue;
                seen_[beyond] = true;
                shafts.push_back(beyond);
            }
        }
        return train;
    }

    const Sketch& sketch_;
    const Circuit& circuit_;
    std::vector<bool> seen_;    // by shaft
    std::vector<bool> listed_;  // by component
};

}  // namespace

std::vector<Train> trains_of(const Sketch& sketch) { return TrainFinder(sketch).find(); }

}  // namespace loopwright
