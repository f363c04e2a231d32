/**
 * Multinomial logistic regression over named features, each hashed to a weight: learned by stochastic gradient steps whose size
 * follows each weight's past gradients (Duchi, Hazan and Singer 2011, "Adaptive subgradient methods", from memory).
 */
import { randomOf } from '../../src/generator/index.ts';

export interface Example {
  /** One list of features for each option: the options are weighed against each other. */
  readonly options: readonly (readonly string[])[];
  /** The index of the option that was right. */
  readonly right: number;
}

const BITS = 20;
const RATE = 0.15;
const SHRINK = 2e-5;
const ROUNDS = 6;

function hash(text: string): number {
  let value = 2166136261;
  for (let at = 0; at < text.length; at++) value = Math.imul(value ^ text.charCodeAt(at), 16777619);
  return (value ^ (value >>> 15)) & ((1 << BITS) - 1);
}

export class Softmax {
  private readonly weights = new Float32Array(1 << BITS);
  private readonly squares = new Float32Array(1 << BITS).fill(1e-3);

  /** The chance of each option, which sum to 1. */
  chances(options: readonly (readonly number[])[]): number[] {
    const scores = options.map((features) => features.reduce((sum, at) => sum + this.weights[at]!, 0));
    const most = Math.max(...scores);
    const raised = scores.map((score) => Math.exp(score - most));
    const total = raised.reduce((sum, each) => sum + each, 0);
    return raised.map((each) => each / total);
  }

  learn(examples: readonly Example[]): this {
    const hashed = examples.map(({ options, right }) => ({ options: options.map(hashedOf), right }));
    const random = randomOf('order');
    for (let round = 0; round < ROUNDS; round++)
      for (const { options, right } of random.shuffle(hashed)) {
        const chances = this.chances(options);
        options.forEach((features, option) => {
          const slope = chances[option]! - (option === right ? 1 : 0);
          if (Math.abs(slope) < 1e-4) return;
          for (const at of features) {
            const gradient = slope + SHRINK * this.weights[at]!;
            this.squares[at]! += gradient * gradient;
            this.weights[at]! -= (RATE * gradient) / Math.sqrt(this.squares[at]!);
          }
        });
      }
    return this;
  }

  best(options: readonly (readonly string[])[]): number {
    const chances = this.chances(options.map(hashedOf));
    return chances.indexOf(Math.max(...chances));
  }
}

const hashedOf = (features: readonly string[]): number[] => [...new Set(features.map(hash))];
